package org.pipwright.engine.rollout;

import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.roll.Roll;

/** What games of a rollout are measured in, and who plays for that. Serves one thread, one game after another. */
interface Measure {
    /** Plays for both sides. */
    StakedGames.Side side();

    /** A game begins: no luck so far. */
    void begin();

    /**
     * Asked before each roll for what is known exactly from there on.
     *
     * @param planes array that holds the unfinished position
     * @param at index of its first plane
     * @param game the game, seen from the side on roll
     * @return whether it is known; what it is then has been taken as what the game came to
     */
    boolean known(int[] planes, int at, CubeGame game);

    /** Takes as what the game came to what the evaluator makes of the position. */
    void judge(int[] planes, int at, CubeGame game);

    /**
     * Takes the luck of a roll off the result.
     *
     * @param planes the position before the roll, the side on roll first
     * @param roll the roll
     * @param number of the roll in its game, from 1
     * @param game the game when the roll was thrown
     */
    void takeLuck(int[] planes, Roll roll, int number, CubeGame game);

    /**
     * Writes the numbers of the game for the counted side: its value less luck, its value, and those of this measure.
     *
     * @param start where the game began
     * @param stakes seen from the side on roll there
     * @param game the game, which is over or was ended before
     */
    void write(Start start, Stakes stakes, CubeGame game, double[] results, int at);

    /** The same for a start that is finished: the side that is not on roll has just won. */
    void writeFinished(Start start, Stakes stakes, double[] results, int at);
}
