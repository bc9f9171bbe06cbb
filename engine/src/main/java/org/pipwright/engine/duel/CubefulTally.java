package org.pipwright.engine.duel;

/**
 * What is known of a duel with the cube between A and B. The values are A's, per money game (points) or per match (1 won, 0
 * lost), and each value behind the means is that of a pair: the mean of its two, so that standard errors allow for the
 * dice the two share.
 *
 * @param values points a game, or share of matches won; one value a pair
 * @param adjusted the same less the luck of the rolls; empty if luck was not measured
 * @param aWins games A has won
 * @param bWins games B has won
 * @param cube what was done with the cube
 * @param turns rolls of both sides in all games
 */
public record CubefulTally(
        Moments values, Moments adjusted, CubefulWins aWins, CubefulWins bWins, CubeUse cube, long turns) {
    /** Nothing played yet. */
    public static final CubefulTally NONE =
            new CubefulTally(Moments.NONE, Moments.NONE, CubefulWins.NONE, CubefulWins.NONE, CubeUse.NONE, 0);

    /**
     * Two sets of pairs put together.
     *
     * @param other the other set
     * @return the tally of both
     */
    CubefulTally plus(CubefulTally other) {
        return new CubefulTally(
                values.plus(other.values),
                adjusted.plus(other.adjusted),
                aWins.plus(other.aWins),
                bWins.plus(other.bWins),
                cube.plus(other.cube),
                turns + other.turns);
    }

    /**
     * Number of pairs.
     *
     * @return half the number of money games or matches
     */
    public long pairs() {
        return values.count();
    }

    /**
     * Number of games, those of matches counted one by one.
     *
     * @return two a pair in money play, more in matches
     */
    public long games() {
        return aWins.total() + bWins.total();
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
    public Moments best() {
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
