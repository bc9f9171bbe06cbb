package org.pipwright.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Entry point of the command line. */
@Command(
        name = "pipwright",
        mixinStandardHelpOptions = true,
        version = "Pipwright 0.1.0",
        description = "Says which backgammon play is best, by how much and why.")
public final class Main implements Runnable {

    private Main() {}

    /**
     * Runs one command and exits with its code.
     *
     * @param args the command and its options
     */
    public static void main(String[] args) {
        StandardError.install();
        System.exit(new CommandLine(new Main()).execute(args));
    }

    /** Without a command there is nothing to do but show the help. */
    @Override
    public void run() {
        CommandLine.usage(this, System.out);
    }
}
