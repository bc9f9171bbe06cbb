package org.pipwright.engine.review;

import java.util.Comparator;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Depth;

/**
 * A play that could have been made.
 *
 * @param play the play
 * @param value what it leaves the side that plays: points per unit of the cube, or the chance to win the match
 * @param outcomes its six chances after the play, by lookahead
 * @param depth how deeply it was looked at; the error is that of the value
 */
public record PlayOption(Play play, double value, Outcomes outcomes, Depth depth) {
    /** Those looked at more deeply come first: a shallow value is no reason to prefer a play to them. */
    static final Comparator<PlayOption> BEST_FIRST =
            Comparator.comparing(PlayOption::depth, Depth.DEEPEST_FIRST).thenComparingDouble(option -> -option.value());
}
