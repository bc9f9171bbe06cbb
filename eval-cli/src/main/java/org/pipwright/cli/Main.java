package org.pipwright.cli;

import org.pipwright.cli.command.NetAhead;
import org.pipwright.cli.console.Console;

/** Entry point of the command line. */
public final class Main {
    private Main() {}

    /**
     * Runs one command and exits with its code.
     *
     * @param args the command and its options
     */
    public static void main(String[] args) {
        StandardError.install();
        NetAhead.begin(args);
        System.exit(new Cli(Console.ofProcess(), Commands.ALL).run(args));
    }
}
