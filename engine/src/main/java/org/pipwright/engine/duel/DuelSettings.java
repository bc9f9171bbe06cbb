package org.pipwright.engine.duel;

import java.util.Optional;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.statistics.SequentialTest;

/**
 * What decides a duel, beside the two who play: the same settings give the same result, bit for bit, with any number of
 * threads.
 *
 * @param start position each game begins with, unfinished; in the first game of a pair A is on roll, in the second B
 * @param openingRoll whether the first roll is that of a new game, which is never a double
 * @param pairs most pairs to play, at least 1
 * @param seed of the dice; pair n uses game n of the seed
 * @param luck whether to measure the luck of the rolls, which takes many times as long as playing
 * @param test when to stop early; empty to play all pairs
 */
public record DuelSettings(
        Position start, boolean openingRoll, long pairs, long seed, boolean luck, Optional<SequentialTest> test) {
    /**
     * Checks the settings.
     *
     * @param start unfinished position
     * @param openingRoll whether the first roll is never a double
     * @param pairs at least 1
     * @param seed any number
     * @param luck whether to measure luck
     * @param test sequential test or empty
     * @throws IllegalArgumentException if a value is out of range
     */
    public DuelSettings {
        if (start.finished()) {
            throw new IllegalArgumentException("the starting position is finished: nothing can be played");
        }
        if (pairs < 1) {
            throw new IllegalArgumentException("a duel takes at least 1 pair of games, not " + pairs);
        }
    }

    /**
     * Full games from the usual start, all pairs, without luck.
     *
     * @param pairs number of pairs, at least 1
     * @param seed of the dice
     * @return the settings
     */
    public static DuelSettings fullGames(long pairs, long seed) {
        return new DuelSettings(Position.start(), true, pairs, seed, false, Optional.empty());
    }

    /**
     * The same with luck measured.
     *
     * @return the new settings
     */
    public DuelSettings withLuck() {
        return new DuelSettings(start, openingRoll, pairs, seed, true, test);
    }

    /**
     * The same with an early stop.
     *
     * @param stop the sequential test
     * @return the new settings
     */
    public DuelSettings until(SequentialTest stop) {
        return new DuelSettings(start, openingRoll, pairs, seed, luck, Optional.of(stop));
    }
}
