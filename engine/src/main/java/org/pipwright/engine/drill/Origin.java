package org.pipwright.engine.drill;

import java.io.Serializable;

/** Where an exercise comes from, so that it can be found again. */
public sealed interface Origin extends Serializable {
    /**
     * A game that the drill has played.
     *
     * @param number its number, from 0: with the seed it tells the whole game
     */
    record OwnGame(long number) implements Origin {}

    /**
     * A decision of a recorded game.
     *
     * @param file the record, as the user named it
     * @param game number of the game in it, from 1
     * @param turn number of the turn in the game, from 1
     * @param player who decided
     */
    record Recorded(String file, int game, int turn, String player) implements Origin {}

    /**
     * A line of a file of positions.
     *
     * @param file the file, as the user named it
     * @param line number of the line, from 1
     */
    record Listed(String file, long line) implements Origin {}
}
