package org.pipwright.engine.duel;

import java.util.Optional;
import org.pipwright.engine.statistics.SequentialTest;

/**
 * What decides a duel, beside the two who play: the same settings give the same result, bit for bit, with any number of
 * threads.
 *
 * @param contest games without the cube, money games or matches; in the first game of a pair A is on roll, in the second
 *     B, except that a die says who starts a game of a match
 * @param pairs most pairs of games or matches to play, at least 1
 * @param seed of the dice; pair n uses game n of the seed, or in matches as many games of its own as they need
 * @param luck whether to measure the luck of the rolls, which takes many times as long as playing
 * @param test when to stop early, on points a game or on the share of matches won; empty to play all pairs
 */
public record DuelSettings(Contest contest, long pairs, long seed, boolean luck, Optional<SequentialTest> test) {
    /**
     * Checks the settings.
     *
     * @param contest what the duel is about
     * @param pairs at least 1
     * @param seed any number
     * @param luck whether to measure luck
     * @param test sequential test or empty
     * @throws IllegalArgumentException if a value is out of range
     */
    public DuelSettings {
        if (pairs < 1) {
            throw new IllegalArgumentException("a duel takes at least 1 pair of games, not " + pairs);
        }
    }

    /**
     * Whole games without the cube, all pairs, without luck.
     *
     * @param pairs number of pairs, at least 1
     * @param seed of the dice
     * @return the settings
     */
    public static DuelSettings fullGames(long pairs, long seed) {
        return new DuelSettings(Contest.Cubeless.FULL_GAMES, pairs, seed, false, Optional.empty());
    }

    /**
     * The same with luck measured.
     *
     * @return the new settings
     */
    public DuelSettings withLuck() {
        return new DuelSettings(contest, pairs, seed, true, test);
    }

    /**
     * The same with an early stop.
     *
     * @param stop the sequential test
     * @return the new settings
     */
    public DuelSettings until(SequentialTest stop) {
        return new DuelSettings(contest, pairs, seed, luck, Optional.of(stop));
    }
}
