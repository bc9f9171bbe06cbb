package org.pipwright.cli;

import org.pipwright.cli.console.Console;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The tool itself: without a command there is nothing to do but show the help. */
@Command(
        name = "pipwright",
        version = "Pipwright 0.2.0",
        sortOptions = false,
        usageHelpWidth = 90,
        synopsisHeading = "Usage: ",
        customSynopsis = {"pipwright COMMAND ...", "       pipwright help COMMAND|TOPIC"},
        descriptionHeading = "%n",
        description = "Says which backgammon play is best, by how much and with what chances.",
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nCommands:%n",
        footerHeading = "%n",
        footer = {
            "Topics: notation, equity, cube, match, training.",
            "",
            "Example:",
            "  pipwright rank start --roll 3-1"
        })
final class Pipwright implements Runnable {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Show the version.")
    private boolean version;

    Pipwright(Console console) {
        this.console = console;
    }

    @Override
    public void run() {
        spec.commandLine().usage(console.out());
    }
}
