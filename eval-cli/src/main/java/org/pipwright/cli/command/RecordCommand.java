package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Commands about records of games; by itself it shows its help. */
@Command(
        name = "record",
        customSynopsis = {"pipwright record COMMAND ...", "       pipwright help record COMMAND"},
        description = {
            "A record holds games as they were played, one line a turn, in a text that is easily typed:",
            "",
            "  pipwright record 1",
            "  players: Ada, Ben",
            "  match: 5",
            "",
            "  game 1",
            "  Ada 3-1: 8/5 6/5",
            "  Ben 6-2: 24/18 13/11  # runs",
            "  Ada doubles",
            "  Ben takes",
            "",
            "Instead of match: the rules of money play, as in money: jacoby, beavers. Also passes, beavers, resigns,"
                    + " resigns gammon, resigns backgammon; and event, place, date and scorer above the first game."
        },
        header = "Check, show or convert records of games.",
        subcommands = {RecordCheckCommand.class, RecordBoardCommand.class, RecordConvertCommand.class},
        commandListHeading = "%nCommands:%n")
public final class RecordCommand extends CliCommand {
    @Spec
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public RecordCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        spec.commandLine().usage(out());
        return 0;
    }
}
