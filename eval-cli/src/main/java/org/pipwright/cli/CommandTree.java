package org.pipwright.cli;

import java.io.OutputStream;
import java.io.PrintWriter;
import org.pipwright.cli.console.Console;
import picocli.CommandLine;

/** All commands with their options, for manual pages and completion scripts that are made from them. */
public final class CommandTree {
    private CommandTree() {}

    /**
     * The whole tree.
     *
     * @return the tool itself, with every command below it
     */
    public static CommandLine all() {
        PrintWriter nowhere = new PrintWriter(OutputStream.nullOutputStream());
        return new Cli(Console.ofProcess(), Commands.ALL).commandLine(nowhere);
    }
}
