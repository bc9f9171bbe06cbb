package org.pipwright.engine.duel;

/**
 * What is known of a duel between A and B. Points are A's, per game, and each value behind the means is that of a pair:
 * the mean of its two games, so that standard errors allow for the dice the two share.
 *
 * @param aWins games A has won
 * @param bWins games B has won
 * @param points points a game of A, one value a pair
 * @param adjusted the same less the luck of the rolls; empty if luck was not measured
 * @param turns rolls of both sides in all games
 */
public record Tally(Wins aWins, Wins bWins, Moments points, Moments adjusted, long turns) {
    /** Nothing played yet. */
    public static final Tally NONE = new Tally(Wins.NONE, Wins.NONE, Moments.NONE, Moments.NONE, 0);

    /**
     * Two sets of pairs put together.
     *
     * @param other the other set
     * @return the tally of both
     */
    public Tally plus(Tally other) {
        return new Tally(
                aWins.plus(other.aWins),
                bWins.plus(other.bWins),
                points.plus(other.points),
                adjusted.plus(other.adjusted),
                turns + other.turns);
    }

    /**
     * Number of pairs.
     *
     * @return half the number of games
     */
    public long pairs() {
        return points.count();
    }

    /**
     * Number of games.
     *
     * @return two a pair
     */
    public long games() {
        return 2 * pairs();
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
     * @return sums of points a game of A, one value a pair
     */
    public Moments best() {
        return luckMeasured() ? adjusted : points;
    }

    /**
     * How many times more pairs would be needed for the same error without the luck adjustment.
     *
     * @return variance of the plain values over that of the adjusted ones; 1 if luck was not measured or no pair varied
     */
    public double varianceReduction() {
        return luckMeasured() && adjusted.variance() > 0 ? points.variance() / adjusted.variance() : 1;
    }
}
