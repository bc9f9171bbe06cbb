package org.pipwright.engine.cube;

import org.pipwright.engine.evaluation.Outcomes;

/** Turns the six chances of a position into values of the cube actions, for one game's stakes. */
@FunctionalInterface
public interface CubeModel {
    /**
     * The values at any chance to win.
     *
     * @param shares how wins and losses split
     * @param cube the cube, seen from the side on roll
     * @return the curves, values to the side on roll
     */
    CubeCurves curves(GammonShares shares, CubeState cube);

    /**
     * The values of a position.
     *
     * @param outcomes six chances of the side on roll, before it rolls
     * @param cube the cube, seen from the side on roll
     * @return values to the side on roll
     */
    default CubeValues values(Outcomes outcomes, CubeState cube) {
        return curves(GammonShares.of(outcomes), cube).at(outcomes.win());
    }
}
