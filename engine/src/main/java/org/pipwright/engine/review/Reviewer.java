package org.pipwright.engine.review;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.search.RollLuck;

/** Finds out about single turns. What it finds depends on the turn and the settings alone. Serves one thread. */
final class Reviewer implements AutoCloseable {
    private final ReviewSettings settings;
    private final Function<Stakes, CubeTerms> terms;
    private final Judge judge;
    private final Progress progress;
    private final RollLuck rolls;

    Reviewer(Knowledge knowledge, ReviewSettings settings, BooleanSupplier stopped) {
        this.settings = settings;
        terms = knowledge.terms();
        judge = new Judge(knowledge, 1);
        progress = progress(stopped);
        rolls = new RollLuck(new StoppableEvaluator(knowledge.judgement().evaluator(), stopped));
    }

    private static Progress progress(BooleanSupplier stopped) {
        return new Progress() {
            @Override
            public void reached(int done, int all) {
                // Turns are counted, not questions.
            }

            @Override
            public boolean stopped() {
                return stopped.getAsBoolean();
            }
        };
    }

    CubeTerms terms(Stakes stakes) {
        return terms.apply(stakes);
    }

    Finding find(Moment moment) {
        Question before = Question.before(moment.position());
        Question asked = moment.mayDouble() ? before.with(moment.stakes(), moment.cube()) : before;
        Verdict verdict = judge.ask(asked, settings.effort(), progress);
        Verdict actions = playedOut(moment, verdict);
        Optional<CubeValues> values = Optional.ofNullable(actions.cube());
        if (moment.played().isEmpty()) {
            return new Finding(verdict.outcomes(), values, OptionalDouble.empty(), actions.basis(), List.of());
        }
        Entry.Turn turn = moment.played().get();
        double luck = rolls.measure(
                moment.position().toPlanes(),
                0,
                turn.roll(),
                moment.opening(),
                terms(moment.stakes()),
                moment.rolling());
        Question rolled = Question.of(moment.position(), turn.roll()).with(moment.stakes(), moment.rolling());
        List<PlayVerdict> options = new PlayChoice(judge, settings, progress).options(rolled, turn.play());
        return new Finding(verdict.outcomes(), values, OptionalDouble.of(luck), actions.basis(), options);
    }

    /** With games if lookahead finds that what was done with the cube costs something. */
    private Verdict playedOut(Moment moment, Verdict verdict) {
        if (settings.games() == 0
                || verdict.cube() == null
                || verdict.basis() == Basis.EXACT
                || !costly(moment, verdict.cube(), terms(moment.stakes()))) {
            return verdict;
        }
        return judge.ask(verdict.question(), settings.playingOut(), progress);
    }

    private static boolean costly(Moment moment, CubeValues values, CubeTerms mine) {
        return Decisions.ofCube(moment, values, mine).stream().anyMatch(decision -> decision.grade() != Grade.FINE);
    }

    @Override
    public void close() {
        judge.close();
    }
}
