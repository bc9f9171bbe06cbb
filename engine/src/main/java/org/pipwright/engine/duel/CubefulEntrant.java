package org.pipwright.engine.duel;

import java.util.function.Supplier;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.search.LookaheadSettings;

/**
 * Who takes part in a duel with the cube: plays checkers and cube for what counts, by an evaluator's chances.
 *
 * @param name what reports call it
 * @param evaluators makes an evaluator for a thread; all of them must judge alike
 * @param lookahead future rolls to average over, 0 to {@value LookaheadSettings#MAX}
 */
public record CubefulEntrant(String name, Supplier<PositionEvaluator> evaluators, int lookahead) {
    /**
     * Checks the lookahead.
     *
     * @param name what reports call it
     * @param evaluators makes an evaluator for a thread
     * @param lookahead 0 to {@value LookaheadSettings#MAX}
     * @throws IllegalArgumentException if it is out of range
     */
    public CubefulEntrant {
        if (lookahead < 0 || lookahead > LookaheadSettings.MAX) {
            throw new IllegalArgumentException(
                    "with the cube a lookahead is 0 to " + LookaheadSettings.MAX + ", not " + lookahead);
        }
    }
}
