package org.pipwright.engine.standings;

import org.pipwright.engine.statistics.RunningMean;

/**
 * What a duel between two of several players has given.
 *
 * @param a number of one player, from 0
 * @param b number of the other
 * @param points points a game of a, one value a pair of games
 */
public record Comparison(int a, int b, RunningMean points) {
    /** Least spread of a pair's value assumed, so that a duel of players that hardly differ does not weigh without limit. */
    private static final double MIN_DEVIATION = 0.1;

    /**
     * Standard error used as the inverse of the weight.
     *
     * @return points per game, above 0
     */
    public double error() {
        return Math.max(points.standardError(), MIN_DEVIATION / Math.sqrt(points.count()));
    }
}
