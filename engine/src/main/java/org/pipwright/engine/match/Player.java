package org.pipwright.engine.match;

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
}
