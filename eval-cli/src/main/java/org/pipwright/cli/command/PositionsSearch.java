package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.batch.PositionFile;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.DrillPositions;
import org.pipwright.cli.report.DrillSource;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.DrillListener;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.Selection;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Plays;

/** Exercises from a file of positions: a play is asked for where a line has a roll, else whether to double for money. */
final class PositionsSearch implements DrillSearch {
    private final String file;
    private final List<Candidate> candidates;
    private final SelectionSettings settings;
    private final Selection selection;

    PositionsSearch(
            String file,
            List<Candidate> candidates,
            SelectionSettings settings,
            Knowledge knowledge,
            DrillListener listener) {
        this.file = file;
        this.candidates = candidates;
        this.settings = settings;
        selection = new Selection(settings, knowledge, listener);
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

    @Override
    public DrillSource source() {
        return new DrillPositions(file, settings.count(), lookahead());
    }

    @Override
    public int wanted() {
        return settings.count();
    }

    @Override
    public int lookahead() {
        return settings.clarity().lookahead();
    }

    @Override
    public List<Exercise> run(int threads) {
        return selection.run(candidates, threads);
    }

    @Override
    public void stop() {
        selection.stop();
    }

    @Override
    public boolean stopped() {
        return selection.stopped();
    }

    @Override
    public String advice() {
        return "the search was stopped";
    }
}
