package org.pipwright.engine.cubeplay;

import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/** Chooses plays in a game with the cube. An instance serves one thread, since it may keep buffers. */
@FunctionalInterface
public interface CheckerPlayer {
    /**
     * Chooses one of the results of a roll.
     *
     * @param planes array that holds the position before the play, the player's side first
     * @param legal the generator that has just been run for this position and roll; not to be run again
     * @param ties randomness for breaking ties
     * @param game the game's cube and stakes, seen from the player, who is on roll
     * @return index of the chosen result, 0 to legal.size() - 1
     */
    int choose(int[] planes, PlayGenerator legal, Dice ties, CubeGame game);

    /**
     * A player that does not look at the cube.
     *
     * @param player chooses as if there were none
     * @return the same choices
     */
    static CheckerPlayer blind(Player player) {
        return (planes, legal, ties, game) -> player.choose(planes, 0, legal, ties);
    }
}
