package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.pipwright.cli.console.Console;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What all commands have in common. A command is made with the console and asked once for its exit code. */
@Command(
        sortOptions = false,
        usageHelpWidth = 90,
        synopsisHeading = "%nUsage: ",
        descriptionHeading = "%n",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        footerHeading = "%n")
abstract class CliCommand implements Callable<Integer> {
    /** Of more interest to a command's user is what only this command has. */
    private static final int LAST = 1000;

    private final Console console;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            order = LAST,
            description = "Show this help.")
    private boolean help;

    @Option(names = "--trace", order = LAST, description = "If Pipwright itself fails, show where.")
    private boolean trace;

    CliCommand(Console console) {
        this.console = console;
    }

    final Console console() {
        return console;
    }

    final PrintWriter out() {
        return console.out();
    }
}
