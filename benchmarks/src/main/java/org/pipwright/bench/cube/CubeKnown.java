package org.pipwright.bench.cube;

import org.pipwright.engine.position.Planes;

/**
 * A position whose values with each cube are known.
 *
 * @param values these, and its chances
 * @param pips mean pip count of the two sides
 * @param checkers mean number of checkers that the sides have left
 */
record CubeKnown(CubeFit.Known values, double pips, double checkers) {
    static CubeKnown of(int[] planes, CubeFit.Known values) {
        double pips = (Planes.pips(planes, 0) + Planes.pips(planes, Planes.SIDE)) / 2.0;
        int checkers =
                Planes.checkers(planes, 0, Planes.ON_BOARD) + Planes.checkers(planes, Planes.SIDE, Planes.ON_BOARD);
        return new CubeKnown(values, pips, checkers / 2.0);
    }
}
