package org.pipwright.engine.duel;

import org.pipwright.engine.statistics.RunningMean;

/**
 * What is known of a duel with the cube between A and B. The values are A's, per money game (points) or per match (1 won, 0
 * lost).
 *
 * @param values points a game, or share of matches won; one value a pair
 * @param adjusted the same less the luck of the rolls; empty if luck was not measured
 * @param aWins games A has won
 * @param bWins games B has won
 * @param cube what was done with the cube
 * @param turns rolls of both sides in all games
 */
public record CubefulTally(
        RunningMean values, RunningMean adjusted, CubefulWins aWins, CubefulWins bWins, CubeUse cube, long turns)
        implements PairTally {
    /** Nothing played yet. */
    public static final CubefulTally NONE =
            new CubefulTally(RunningMean.NONE, RunningMean.NONE, CubefulWins.NONE, CubefulWins.NONE, CubeUse.NONE, 0);

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

    @Override
    public long games() {
        return aWins.total() + bWins.total();
    }
}
