package org.pipwright.engine.evaluation;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.GameResult;

/** The chances of a finished game: certainty. */
public final class FinishedGames {
    private FinishedGames() {}

    /**
     * Whether one side has borne off all of its checkers.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @return true if no roll follows
     */
    public static boolean over(int[] planes, int at) {
        return (Planes.occupied(planes, at) & Planes.ON_BOARD) == 0
                || (Planes.occupied(planes, at + Planes.SIDE) & Planes.ON_BOARD) == 0;
    }

    /**
     * Writes the chances of a position if its game is finished.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param out where to write
     * @param outAt index of the first of six chances, for the side whose planes come first
     * @return whether the game is finished; if not, nothing was written
     */
    public static boolean write(int[] planes, int at, float[] out, int outAt) {
        if (!over(planes, at)) {
            return false;
        }
        boolean firstWon = (Planes.occupied(planes, at) & Planes.ON_BOARD) == 0;
        int loser = firstWon ? at + Planes.SIDE : at;
        Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
        out[outAt + (firstWon ? 0 : 3) + GameResult.of(planes, loser).ordinal()] = 1;
        return true;
    }
}
