package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;

/** Sends processes what Ctrl-C sends. */
final class Interrupts {
    private Interrupts() {}

    /**
     * A shell without job control starts what it runs in the background deaf to interrupts, and their children are so
     * too: tests that were begun in that way would wait for ever, and are skipped; or fail, see {@link Needed}.
     */
    static void assumeHeard() throws IOException, InterruptedException {
        Process shell = new ProcessBuilder("sh", "-c", "kill -INT $$; exit 0").start();
        if (shell.waitFor() == 0) {
            Needed.missing("interrupts are ignored here: run the tests in the foreground");
        }
    }

    static void send(Process process) throws IOException, InterruptedException {
        String number = Long.toString(process.pid());
        assertEquals(0, new ProcessBuilder("kill", "-INT", number).start().waitFor());
    }
}
