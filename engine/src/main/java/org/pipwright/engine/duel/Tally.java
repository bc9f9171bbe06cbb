package org.pipwright.engine.duel;

import java.io.Serializable;
import org.pipwright.engine.statistics.RunningMean;

/**
 * What is known of a duel between A and B. The values are A's, per game (points) or per match (1 won, 0 lost). Each value is
 * that of a pair: the mean of its two games or matches, so that standard errors allow for the dice the two share.
 *
 * @param values points a game, or share of matches won; one value a pair
 * @param adjusted the same less the luck of the rolls; empty if luck was not measured
 * @param aWins games A has won
 * @param bWins games B has won
 * @param cube what was done with the cube; none without it
 * @param turns rolls of both sides in all games
 */
public record Tally(RunningMean values, RunningMean adjusted, Wins aWins, Wins bWins, CubeUse cube, long turns)
        implements Serializable {
    /** Nothing played yet. */
    public static final Tally NONE =
            new Tally(RunningMean.NONE, RunningMean.NONE, Wins.NONE, Wins.NONE, CubeUse.NONE, 0);

    /** Two sets of pairs put together. */
    Tally plus(Tally other) {
        return new Tally(
                values.plus(other.values),
                adjusted.plus(other.adjusted),
                aWins.plus(other.aWins),
                bWins.plus(other.bWins),
                cube.plus(other.cube),
                turns + other.turns);
    }

    /**
     * Number of games.
     *
     * @return those of matches counted one by one
     */
    public long games() {
        return aWins.total() + bWins.total();
    }

    /**
     * Number of pairs.
     *
     * @return half the number of games or matches
     */
    public long pairs() {
        return values.count();
    }

    /**
     * Whether the luck of the rolls was measured.
     *
     * @return true if {@link #adjusted} holds values
     */
    public boolean luckMeasured() {
        return adjusted.count() > 0;
    }

    /**
     * The values with the smaller error: luck-adjusted ones where there are any.
     *
     * @return sums of A's values, one a pair
     */
    public RunningMean best() {
        return luckMeasured() ? adjusted : values;
    }

    /**
     * How many times more pairs would be needed for the same error without the luck adjustment.
     *
     * @return variance of the plain values over that of the adjusted ones; 1 if luck was not measured or no pair varied
     */
    public double varianceReduction() {
        return luckMeasured() && adjusted.variance() > 0 ? values.variance() / adjusted.variance() : 1;
    }
}
