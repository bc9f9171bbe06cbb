package org.pipwright.engine.standings;

import org.pipwright.engine.duel.Tally;

/**
 * A duel of two of several players.
 *
 * @param a number of one player, from 0
 * @param b number of the other
 * @param seed of its dice
 * @param tally what came of it
 */
public record Match(int a, int b, long seed, Tally tally) {
    /**
     * What the ratings are fitted to.
     *
     * @return the result with the smaller error
     */
    public Comparison comparison() {
        return new Comparison(a, b, tally.best());
    }
}
