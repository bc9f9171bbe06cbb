package org.pipwright.engine.search;

import java.util.List;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.Stakes;

/**
 * The cubes asked about, and what is played for.
 *
 * @param stakes what is played for; null if no cube is asked about
 * @param states the cubes, seen from the side on roll
 */
record Cubes(Stakes stakes, List<CubeState> states) {
    static final Cubes NONE = new Cubes(null, List.of());

    static Cubes of(Choice choice) {
        return choice.stakes() instanceof CubelessStakes ? NONE : new Cubes(choice.stakes(), List.of(choice.cube()));
    }

    /** Those that the side on roll may come to roll with. */
    static Cubes toRollWith(Stakes stakes, CubeState cube) {
        return stakes instanceof CubelessStakes ? NONE : new Cubes(stakes, stakes.cubesToRollWith(cube));
    }
}
