package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Heading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Record to a verdict and the score. */
@Command(
        name = "check",
        customSynopsis = "pipwright record check FILE",
        header = "Check a record against the rules.",
        description = {
            "Plays the whole record through: turns, plays, cube, score and the Crawford rule. Reports the"
                    + " first mistake with its line and column, what was expected there and the legal plays, and ends with"
                    + " exit code 2. If there is none, prints how each game ended."
        },
        footer = {"Example:", "  pipwright record check evening.txt"})
public final class RecordCheckCommand extends CliCommand {
    @Parameters(paramLabel = "FILE", description = "A record, or an SGF file if its name ends in .sgf.")
    private String file;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public RecordCheckCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        GameRecord record = RecordFiles.read(file);
        Heading heading = record.heading();
        out().println(heading.name(0) + " against " + heading.name(1) + ", "
                + (heading.rules().match() ? "match to " + heading.rules().length() : "money play"));
        for (int i = 0; i < record.games().size(); i++) {
            Game game = record.games().get(i);
            out().println("game " + (i + 1) + ": " + ending(heading, game));
        }
        out().println("score: " + record.points(0) + "-" + record.points(1));
        return 0;
    }

    private static String ending(Heading heading, Game game) {
        if (game.points() == 0) {
            return "not finished";
        }
        int points = Math.abs(game.points());
        return heading.name(game.points() > 0 ? 0 : 1) + " wins " + points + (points == 1 ? " point" : " points");
    }
}
