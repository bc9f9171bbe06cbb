package org.pipwright.engine.match;

import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/** Chooses plays. An instance serves one thread, since it may keep buffers. */
public interface Player {
    /**
     * Chooses one of the results of a roll.
     *
     * @param planes array that holds the position before the play, the player's side first
     * @param at index of its first plane
     * @param legal the generator that has just been run for this position and roll; not to be run again
     * @param ties randomness for breaking ties; players that need none leave it alone
     * @return index of the chosen result, 0 to legal.size() - 1
     */
    int choose(int[] planes, int at, PlayGenerator legal, Dice ties);

    /**
     * The same in a game for what is at stake. Players that do not look at the cube choose as if there were none.
     *
     * @param planes array that holds the position before the play, the player's side first
     * @param legal the generator that has just been run for this position and roll; not to be run again
     * @param ties randomness for breaking ties
     * @param game the game's cube and stakes, seen from the player, who is on roll
     * @return index of the chosen result, 0 to legal.size() - 1
     */
    default int choose(int[] planes, PlayGenerator legal, Dice ties, CubeGame game) {
        return choose(planes, 0, legal, ties);
    }
}
