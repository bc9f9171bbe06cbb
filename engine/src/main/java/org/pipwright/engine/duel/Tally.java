package org.pipwright.engine.duel;

import org.pipwright.engine.statistics.RunningMean;

/**
 * What is known of a duel between A and B.
 *
 * @param aWins games A has won
 * @param bWins games B has won
 * @param values points a game of A, one value a pair
 * @param adjusted the same less the luck of the rolls; empty if luck was not measured
 * @param turns rolls of both sides in all games
 */
public record Tally(Wins aWins, Wins bWins, RunningMean values, RunningMean adjusted, long turns) implements PairTally {
    /** Nothing played yet. */
    public static final Tally NONE = new Tally(Wins.NONE, Wins.NONE, RunningMean.NONE, RunningMean.NONE, 0);

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
                values.plus(other.values),
                adjusted.plus(other.adjusted),
                turns + other.turns);
    }

    @Override
    public long games() {
        return 2 * pairs();
    }
}
