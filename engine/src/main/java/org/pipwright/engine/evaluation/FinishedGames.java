package org.pipwright.engine.evaluation;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.GameResult;

/** The chances of a finished game: certainty. */
public final class FinishedGames {
    private FinishedGames() {}

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
        boolean firstWon = (Planes.occupied(planes, at) & Planes.ON_BOARD) == 0;
        boolean secondWon = (Planes.occupied(planes, at + Planes.SIDE) & Planes.ON_BOARD) == 0;
        if (!firstWon && !secondWon) {
            return false;
        }
        int loser = firstWon ? at + Planes.SIDE : at;
        Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
        out[outAt + (firstWon ? 0 : 3) + GameResult.of(planes, loser).ordinal()] = 1;
        return true;
    }
}
