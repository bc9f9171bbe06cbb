package org.pipwright.cli.command;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.cli.desk.Rehearsal;
import org.pipwright.cli.duel.Interruption;

/** Runs a desk until it is interrupted; apart from its command, because it needs the server. */
final class DeskJob {
    /** Property of a run that only tells Java which classes a desk needs. */
    private static final String REHEARSAL = "pipwright.desk.rehearsal";

    private DeskJob() {}

    static void run(Console console, DeskSetup setup, boolean browser) {
        CountDownLatch end = new CountDownLatch(1);
        try (DeskServer server = new DeskServer(setup)) {
            if (Boolean.getBoolean(REHEARSAL)) {
                Rehearsal.show(server.awaitNet().address());
                return;
            }
            console.out().println("The desk is at " + server.address());
            console.out().println("Records are kept in " + setup.folder().toAbsolutePath() + "; Ctrl-C ends the desk.");
            server.tablets().ifPresent(tablets -> console.out()
                    .println("A port is open: everybody in that network reaches " + tablets.address()
                            + " until the desk ends. With the code " + tablets.code()
                            + " one can look at what the class is shown, and guess."));
            console.out().flush();
            if (browser) {
                open(server.address());
            }
            Interruption.during(
                    () -> {
                        server.awaitNet();
                        await(end);
                    },
                    end::countDown);
        }
    }

    private static void await(CountDownLatch end) {
        try {
            end.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Where no browser can be opened, the address that is printed is enough. */
    private static void open(String address) {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        List<String> command = system.contains("mac")
                ? List.of("open", address)
                : system.contains("win")
                        ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                        : List.of("xdg-open", address);
        try {
            new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException e) {
            return;
        }
    }
}
