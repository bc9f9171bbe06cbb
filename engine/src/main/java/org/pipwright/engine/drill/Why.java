package org.pipwright.engine.drill;

import java.util.List;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Telling;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;

/**
 * Finds the main reasons of exercises about one roll of one position. Deeper looks change what the plays are worth, but not
 * the facts about them, which take hundreds of positions to find: those of the last two plays are kept.
 */
final class Why {
    private final Judge judge;
    private final Telling telling;
    private final Progress progress;
    private Explanation last;

    Why(Judge judge, Telling telling, Progress progress) {
        this.judge = judge;
        this.telling = telling;
        this.progress = progress;
    }

    /** The main reason of an exercise. */
    MainReason of(PlayExercise exercise) {
        PlayVerdict best = exercise.best();
        PlayVerdict weak = exercise.weak();
        boolean known =
                last != null && same(last.best(), best) && same(last.rivals().get(0), weak);
        last = known
                ? new Explanation(
                        last.lookahead(),
                        now(last.best(), best),
                        List.of(now(last.rivals().get(0), weak)),
                        last.gammons())
                : Explanation.of(exercise.position(), List.of(best, weak), judge, 0, progress);
        return MainReason.of(exercise, last, telling);
    }

    private static boolean same(ExplainedPlay known, PlayVerdict asked) {
        return known.ranked().play().equals(asked.play());
    }

    private static ExplainedPlay now(ExplainedPlay known, PlayVerdict looked) {
        return new ExplainedPlay(looked, known.facts(), known.swings());
    }
}
