package org.pipwright.bench;

import java.io.IOException;
import java.util.List;

/** How a benchmark's main method ends: 0, 2 after input that cannot be, 1 after any other failure. */
public final class Main {
    private Main() {}

    /** What a command does. */
    @FunctionalInterface
    public interface Command {
        /** Does it; an {@link IllegalArgumentException} says in one line what is wrong with the input. */
        void run(List<String> args) throws IOException;
    }

    /** Runs a command and ends the JVM with its exit code unless that is 0. */
    public static void run(String[] args, Command command) {
        try {
            command.run(List.of(args));
        } catch (IllegalArgumentException | IOException e) {
            System.err.println(e.getMessage());
            System.exit(2);
        }
    }
}
