package org.pipwright.engine.search;

import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.Stakes;

/**
 * The results of a roll to choose from, and what is played for. Arrays are not copied.
 *
 * @param planes the position before the play, the mover's side first
 * @param results the results, as the play generator gives them
 * @param count number of results, at least 1
 * @param stakes what is played for, seen from the mover; without a cube cubeless points count, else the value that a result
 *     leaves with the cube where it stands
 * @param cube the cube, seen from the mover
 */
public record Choice(int[] planes, int[] results, int count, Stakes stakes, CubeState cube) {
    /**
     * A choice without a cube.
     *
     * @param planes the position before the play, the mover's side first
     * @param results the results, as the play generator gives them
     * @param count number of results, at least 1
     */
    public Choice(int[] planes, int[] results, int count) {
        this(planes, results, count, new CubelessStakes(), CubeState.START);
    }
}
