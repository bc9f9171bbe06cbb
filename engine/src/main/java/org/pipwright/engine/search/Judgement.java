package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.evaluation.PositionEvaluator;

/**
 * What one thread judges positions with.
 *
 * @param evaluator values positions
 * @param horizon knows which positions need no looking ahead
 */
public record Judgement(PositionEvaluator evaluator, Horizon horizon) {
    /**
     * A judgement without a horizon: every game goes on to its end.
     *
     * @param evaluator values positions
     * @return evaluator and {@link Horizon#NONE}
     */
    public static Judgement by(PositionEvaluator evaluator) {
        return new Judgement(evaluator, Horizon.NONE);
    }
}
