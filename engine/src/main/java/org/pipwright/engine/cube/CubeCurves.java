package org.pipwright.engine.cube;

/**
 * The cube actions' values as functions of the chance to win, with everything else of a position (shares of gammons, cube,
 * score) held fixed.
 */
@FunctionalInterface
public interface CubeCurves {
    /**
     * The values at a chance to win.
     *
     * @param win chance of the side on roll, in [0, 1]
     * @return values to the side on roll
     */
    CubeValues at(double win);
}
