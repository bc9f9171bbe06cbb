package org.pipwright.engine.drill;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.explain.Cause;
import org.pipwright.engine.explain.Causes;
import org.pipwright.engine.explain.ChancesApart;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.explain.Telling;

/** The main reason why the answer of an exercise is better than the weaker play, as the words of the answer will have it. */
record MainReason(List<Motive> motives) {
    /** Of an exercise without the cube, by the facts about its two plays. */
    static MainReason of(PlayExercise exercise, Explanation why, Telling telling) {
        ExplainedPlay weak = why.rivals().get(0);
        double difference = ChancesApart.of(
                        exercise.best().outcomes(), exercise.weak().outcomes(), why.gammons())
                .sum();
        return new MainReason(Causes.told(why.best(), weak, why.gammons(), telling).leading(difference).stream()
                .map(Cause::motive)
                .collect(Collectors.toUnmodifiableList()));
    }

    /** Whether it is what a theme is about. */
    boolean about(Theme theme) {
        return motives.stream().anyMatch(theme::about);
    }

    /** What the exercise teaches: the kind of fact to look at, and whether to hit, or to hit less, for it. */
    String lesson(PlayExercise exercise) {
        int more = Facts.hits(exercise.position(), exercise.best().play().result())
                - Facts.hits(exercise.position(), exercise.weak().play().result());
        return motives.get(0) + " " + Integer.signum(more);
    }
}
