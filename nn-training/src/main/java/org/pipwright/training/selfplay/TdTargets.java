package org.pipwright.training.selfplay;

import org.pipwright.engine.evaluation.Outcomes;

/**
 * Targets of TD(lambda) in the forward view (Sutton, Machine Learning 3 (1988), 9-44): the target of a position mixes, at
 * the ratio lambda, what the evaluator thought after the play made there with the target of the next position.
 */
final class TdTargets {
    private TdTargets() {}

    /**
     * Turns the chances after each play of a game into the targets of the positions before the rolls, in place.
     *
     * @param chances six a turn, for the side that played; those of the last turn are exact
     * @param turns number of turns
     * @param lambda 0 (the next value alone) to 1 (the end of the game alone)
     */
    static void apply(float[] chances, int turns, float lambda) {
        for (int t = turns - 2; t >= 0; t--) {
            int at = t * Outcomes.COUNT;
            int next = at + Outcomes.COUNT;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                int other = (k + Outcomes.COUNT / 2) % Outcomes.COUNT;
                chances[at + k] = (1 - lambda) * chances[at + k] + lambda * chances[next + other];
            }
        }
    }
}
