package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Outcomes;

/**
 * One result of a roll as a search has valued it.
 *
 * @param result its index among the results given
 * @param outcomes the six chances for the side that plays, both sides playing for points without the cube
 * @param lookahead number of future rolls averaged over
 * @param value what it is worth to the side that plays: with a cube what it leaves with the cube where it stands, per unit
 *     of the cube or as a chance to win the match; else points without the cube
 */
public record Searched(int result, Outcomes outcomes, int lookahead, double value) {
    /**
     * What was valued without a cube.
     *
     * @param result its index among the results given
     * @param outcomes the six chances for the side that plays
     * @param lookahead number of future rolls averaged over
     */
    public Searched(int result, Outcomes outcomes, int lookahead) {
        this(result, outcomes, lookahead, outcomes.equity());
    }
}
