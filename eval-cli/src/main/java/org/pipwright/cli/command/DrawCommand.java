package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.report.BoardText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Position to a board of characters. */
@Command(
        name = "draw",
        customSynopsis = "pipwright draw POSITION",
        header = "Draw a position as a text board.",
        description = {
            "A count and a sign for each point, numbered from the side on roll, whose home is at the lower right; the bar"
                    + " in the middle; pip counts and checkers borne off at the side."
        },
        footer = {"Example:", "  pipwright draw 2@6 1@bar / 3@4 2@20 of 5"})
public final class DrawCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public DrawCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        BoardText.write(position.read(console().in()), console().unicode(), out());
        return 0;
    }
}
