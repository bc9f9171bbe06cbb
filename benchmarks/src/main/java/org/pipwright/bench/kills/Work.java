package org.pipwright.bench.kills;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A command in a process of its own. */
class Work {
    private final Process process;
    private final Path out;
    private final Path err;

    /**
     * A process that has been started.
     *
     * @param process the process
     * @param out where what it prints goes
     * @param err where its errors go
     */
    Work(Process process, Path out, Path err) {
        this.process = process;
        this.out = out;
        this.err = err;
    }

    /** Waits for its end; whether it has come. */
    boolean await(Duration longest) {
        try {
            return process.waitFor(longest.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    boolean isAlive() {
        return process.isAlive();
    }

    /** Sends a signal, such as {@code INT}; one that has ended already does not mind. */
    void send(String signal) throws IOException {
        try {
            new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid()))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start()
                    .waitFor();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Ends it in any case. */
    void end() {
        process.destroyForcibly();
        await(Duration.ofMinutes(1));
    }

    /** Whether what it did is done: usually, that it has ended well. */
    boolean done() {
        return !isAlive() && process.exitValue() == 0;
    }

    int code() {
        return process.exitValue();
    }

    String out() {
        return text(out);
    }

    String err() {
        return text(err);
    }

    private static String text(Path file) {
        try {
            return Files.exists(file) ? new String(Files.readAllBytes(file), StandardCharsets.UTF_8) : "";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What it said that no command should say, empty if nothing; a second process may be told to wait. */
    List<String> complaints() {
        return err().lines()
                .filter(line -> line.contains("itself failed")
                        || line.matches("\\s+at [\\w.$/]+\\(.*")
                        || line.contains("Exception in thread")
                        || line.contains("fatal error"))
                .limit(1)
                .toList();
    }
}
