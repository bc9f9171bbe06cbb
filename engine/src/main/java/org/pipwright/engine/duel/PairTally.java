package org.pipwright.engine.duel;

import org.pipwright.engine.statistics.RunningMean;

/**
 * What is known of A's results in a duel, with or without the cube. Each value is that of a pair: the mean of its two games
 * or matches, so that standard errors allow for the dice the two share.
 */
public sealed interface PairTally permits Tally, CubefulTally {
    /**
     * A's results.
     *
     * @return points a game, or share of matches won; one value a pair
     */
    RunningMean values();

    /**
     * The same less the luck of the rolls.
     *
     * @return one value a pair; empty if luck was not measured
     */
    RunningMean adjusted();

    /**
     * Number of rolls.
     *
     * @return rolls of both sides in all games
     */
    long turns();

    /**
     * Number of games.
     *
     * @return those of matches counted one by one
     */
    long games();

    /**
     * Number of pairs.
     *
     * @return half the number of money games or matches
     */
    default long pairs() {
        return values().count();
    }

    /**
     * Whether the luck of the rolls was measured.
     *
     * @return true if {@link #adjusted} holds values
     */
    default boolean luckMeasured() {
        return adjusted().count() > 0;
    }

    /**
     * The values with the smaller error: luck-adjusted ones where there are any.
     *
     * @return sums of A's values, one a pair
     */
    default RunningMean best() {
        return luckMeasured() ? adjusted() : values();
    }

    /**
     * How many times more pairs would be needed for the same error without the luck adjustment.
     *
     * @return variance of the plain values over that of the adjusted ones; 1 if luck was not measured or no pair varied
     */
    default double varianceReduction() {
        return luckMeasured() && adjusted().variance() > 0
                ? values().variance() / adjusted().variance()
                : 1;
    }
}
