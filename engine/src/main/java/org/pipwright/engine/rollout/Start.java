package org.pipwright.engine.rollout;

import java.io.Serializable;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;

/**
 * Where the games of one candidate of a rollout begin, and whose results are counted.
 *
 * @param position the position before the first roll; if it is finished, the side not on roll has won
 * @param cube the cube, seen from the side on roll there; {@link CubeState#START} without one
 * @param rolling whether that side has decided about the cube and rolls
 * @param counted whether results count for the side on roll there, or else for the other side
 */
public record Start(Position position, CubeState cube, boolean rolling, boolean counted) implements Serializable {
    /**
     * The side on roll rolls with the cube as it is.
     *
     * @param position an unfinished position before the roll
     * @param cube the cube, seen from the side on roll
     * @return the start; results count for the side on roll
     */
    public static Start rolling(Position position, CubeState cube) {
        return new Start(position, cube, true, true);
    }

    /**
     * After a play, the opponent first decides about the cube.
     *
     * @param play a play; it may end the game
     * @param cube the cube, seen from the side that plays
     * @return the start; results count for the side that plays
     */
    public static Start after(Play play, CubeState cube) {
        return new Start(play.next(), cube.swapped(), false, false);
    }
}
