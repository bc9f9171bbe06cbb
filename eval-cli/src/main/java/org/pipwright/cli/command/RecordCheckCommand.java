package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.record.RecordCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Record to a verdict and the score. */
@Command(
        name = "check",
        customSynopsis = "pipwright record check FILE",
        header = "Check a record against the rules.",
        description = {
            "Plays the whole record through: turns, plays, cube, score and the Crawford rule. Reports each"
                    + " mistake in a line, with its place, what was expected there and the legal plays, and ends with exit"
                    + " code 2; record board shows the board before the first. If there is none, prints how each game"
                    + " ended.",
            "After a play that the roll does not allow, nobody knows what could be played: up to the next game only names,"
                    + " rolls and words are checked then, and of an SGF file nothing more."
        },
        footer = {"Example:", "  pipwright record check evening.txt"})
public final class RecordCheckCommand extends CliCommand {
    /** Mistakes to tell at once. */
    private static final int MAX_MISTAKES = 20;

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
        RecordCheck check = RecordFiles.check(file);
        GameRecord record = check.record().orElseThrow(() -> allBut(check.faults()));
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

    /** Tells all mistakes but the last, which ends the command. */
    private UserError allBut(List<RecordCheck.Fault> faults) {
        int last = Math.min(faults.size(), MAX_MISTAKES) - 1;
        faults.subList(0, last).forEach(fault -> console()
                .err()
                .println("pipwright: " + RecordFiles.fault(file, fault).getMessage()));
        String more =
                faults.size() > MAX_MISTAKES ? "; " + (faults.size() - MAX_MISTAKES) + " more mistakes follow" : "";
        return new UserError(RecordFiles.fault(file, faults.get(last)).getMessage() + more);
    }

    private static String ending(Heading heading, Game game) {
        if (game.points() == 0) {
            return "not finished";
        }
        int points = Math.abs(game.points());
        return heading.name(game.points() > 0 ? 0 : 1) + " wins " + points + (points == 1 ? " point" : " points");
    }
}
