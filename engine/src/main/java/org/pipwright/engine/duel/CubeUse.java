package org.pipwright.engine.duel;

import java.io.Serializable;

/**
 * What was done with the cube in some games.
 *
 * @param doubled games in which somebody doubled, taken or not
 * @param cubes sum of what the cube showed at the end of each game, before a double that was passed
 * @param highest highest cube seen; 0 without games
 */
public record CubeUse(long doubled, long cubes, int highest) implements Serializable {
    /** No games yet. */
    public static final CubeUse NONE = new CubeUse(0, 0, 0);

    /** One game more. */
    CubeUse plus(boolean passed, int cube) {
        return new CubeUse(doubled + (passed || cube > 1 ? 1 : 0), cubes + cube, Math.max(highest, cube));
    }

    /** Two sets of games put together. */
    CubeUse plus(CubeUse other) {
        return new CubeUse(doubled + other.doubled, cubes + other.cubes, Math.max(highest, other.highest));
    }
}
