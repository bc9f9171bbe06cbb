package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.batch.PositionFile;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.DrillPositions;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.Selection;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Plays;

/** Exercises from a file of positions: a play is asked for where a line has a roll, else whether to double for money. */
final class PositionsSearch {
    private PositionsSearch() {}

    static DrillSearch of(String file, List<Candidate> candidates, SelectionSettings settings) {
        int lookahead = settings.clarity().lookahead();
        return new DrillSearch(
                new DrillPositions(file, settings.count(), lookahead),
                settings.count(),
                "lines",
                lookahead,
                "the search was stopped",
                (knowledge, listener, workers) -> {
                    Selection selection = new Selection(settings, knowledge, listener);
                    return workers.have(
                            threads -> selection.run(candidates, threads),
                            workforce -> selection.run(candidates, workforce));
                });
    }

    /** What the lines of a file ask; fails if one asks nothing. */
    static List<Candidate> read(String file, int most, Console console) {
        List<PositionFile.Entry> entries = PositionFile.read(file);
        if (entries.isEmpty() || entries.size() > most) {
            throw new UserError(
                    "'" + file + "' has " + (entries.isEmpty() ? "no position" : entries.size() + " positions")
                            + ": use 1 to " + most + ", one a line");
        }
        return entries.stream().map(entry -> candidate(file, entry, console)).toList();
    }

    private static Candidate candidate(String file, PositionFile.Entry entry, Console console) {
        Request request = entry.request();
        String at = file + ", line " + entry.number() + ": ";
        MissingCheckers.questions(request.position())
                .forEach(line -> console.err().println(at + line));
        if (request.position().finished()) {
            throw new UserError(at + "the game is over in this position: there is nothing to ask");
        }
        Origin origin = new Origin.Listed(file, entry.number());
        if (request.roll() == null) {
            return Candidate.asked(origin, Question.before(request.position()).forMoney());
        }
        if (Plays.legal(request.position(), request.roll()).size() < 2) {
            throw new UserError(at + "no choice of plays for " + request.roll() + ": there is nothing to ask");
        }
        return Candidate.asked(origin, Question.of(request.position(), request.roll()));
    }
}
