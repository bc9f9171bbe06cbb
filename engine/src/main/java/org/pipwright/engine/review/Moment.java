package org.pipwright.engine.review;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.record.Entry;

/**
 * One turn of a recorded game: what the side on roll had before it, and what was done.
 *
 * @param game number of the game in the record, from 0
 * @param turn number of the turn in the game, from 0
 * @param onRoll the side on roll, 0 or 1
 * @param position before the roll, seen from the side on roll
 * @param stakes what is played for, seen from the side on roll
 * @param cube the cube before the turn, seen from the side on roll
 * @param opening whether the roll opens the game, so that it is no double and nobody may turn the cube
 * @param mayDouble whether the side on roll had the choice to double
 * @param doubled whether it did
 * @param answer what the opponent answered; empty if there was no double, or the record stops there
 * @param rolling the cube with which the roll was played, seen from the side on roll
 * @param played the roll and the play; empty if the turn ended before
 * @param resigned who gave up here instead, and what; empty if nobody did
 * @param notes what the record says about the turn
 */
public record Moment(
        int game,
        int turn,
        int onRoll,
        Position position,
        Stakes stakes,
        CubeState cube,
        boolean opening,
        boolean mayDouble,
        boolean doubled,
        Optional<CubeAction> answer,
        CubeState rolling,
        Optional<Entry.Turn> played,
        Optional<Entry.Resignation> resigned,
        List<String> notes) {
    /**
     * Keeps the notes.
     *
     * @param game number of the game
     * @param turn number of the turn
     * @param onRoll the side on roll
     * @param position before the roll
     * @param stakes what is played for
     * @param cube the cube before the turn
     * @param opening whether the roll opens the game
     * @param mayDouble whether doubling was a choice
     * @param doubled whether it was made
     * @param answer the opponent's answer
     * @param rolling the cube at the roll
     * @param played roll and play
     * @param resigned a resignation
     * @param notes remarks
     */
    public Moment {
        notes = List.copyOf(notes);
    }

    /**
     * The side that answers a double.
     *
     * @return the side that is not on roll
     */
    public int opponent() {
        return 1 - onRoll;
    }
}
