package org.pipwright.engine.record;

import java.util.Set;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.position.Position;

/**
 * The state of a game in progress.
 *
 * @param number its number in the record, from 1
 * @param begun whether a first roll has been played
 * @param over whether it has ended
 * @param last whether it has ended and no game can follow, because the match is won
 * @param points what side 0 has won, negative if side 1 has; 0 until the game is over
 * @param position before the next roll, seen from the side on roll
 * @param onRoll who is on roll, 0 or 1; of no meaning before the first roll
 * @param decides who has to act next, 0 or 1: the side on roll, or the one that answers a double
 * @param actions what it may do about the cube; none where only a roll can be played
 * @param cube the cube, seen from the side on roll
 * @param stakes what is played for, seen from the side on roll; from side 0 before the first roll
 */
@PublicApi
public record Stand(
        int number,
        boolean begun,
        boolean over,
        boolean last,
        int points,
        Position position,
        int onRoll,
        int decides,
        Set<CubeAction> actions,
        CubeState cube,
        Stakes stakes) {
    /**
     * Whether a double has to be answered.
     *
     * @return true between a double and its answer
     */
    public boolean offered() {
        return actions.contains(CubeAction.TAKE);
    }

    /**
     * Whether the side on roll may double.
     *
     * @return true before its roll, where cube, score and rules allow it
     */
    public boolean mayDouble() {
        return actions.contains(CubeAction.DOUBLE);
    }

    /**
     * Whether a roll can be played now.
     *
     * @return false after the end and where a double has to be answered
     */
    public boolean mayRoll() {
        return !over && !offered();
    }
}
