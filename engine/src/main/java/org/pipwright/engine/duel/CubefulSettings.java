package org.pipwright.engine.duel;

import java.util.Optional;
import org.pipwright.engine.statistics.SequentialTest;

/**
 * What decides a duel with the cube, beside the two who play: the same settings give the same result, bit for bit, with any
 * number of threads.
 *
 * @param contest money games or matches
 * @param pairs most pairs of games or matches to play, at least 1
 * @param seed of the dice; both of a pair have the same dice with sides swapped
 * @param luck whether to measure the luck of the rolls, which takes many times as long as playing
 * @param test when to stop early, on points a game or on the share of matches won; empty to play all pairs
 */
public record CubefulSettings(Contest contest, long pairs, long seed, boolean luck, Optional<SequentialTest> test) {
    /**
     * Checks the settings.
     *
     * @param contest money games or matches
     * @param pairs at least 1
     * @param seed any number
     * @param luck whether to measure luck
     * @param test sequential test or empty
     * @throws IllegalArgumentException if a value is out of range
     */
    public CubefulSettings {
        if (pairs < 1) {
            throw new IllegalArgumentException("a duel takes at least 1 pair, not " + pairs);
        }
    }
}
