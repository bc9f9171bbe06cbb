package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Commands about nets; by itself it shows its help. */
@Command(
        name = "net",
        customSynopsis = {"pipwright net COMMAND ...", "       pipwright help net COMMAND"},
        description =
                "A net is what Pipwright judges with: trained weights in one file, with a card that tells their story.",
        header = "Describe, verify, export or join nets.",
        subcommands = {NetDescribeCommand.class, NetVerifyCommand.class, NetExportCommand.class, NetJoinCommand.class},
        commandListHeading = "%nCommands:%n")
public final class NetCommand extends CliCommand {
    @Spec
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public NetCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        spec.commandLine().usage(out());
        return 0;
    }
}
