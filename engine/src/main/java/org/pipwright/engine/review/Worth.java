package org.pipwright.engine.review;

import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;

/** Values with a cube, in points and in what counts in the end. */
final class Worth {
    private final CubeTerms terms;
    private final CubeState cube;

    /** Under given terms and with a given cube, both seen from the side that plays. */
    Worth(CubeTerms terms, CubeState cube) {
        this.terms = terms;
        this.cube = cube;
    }

    /** What a point is worth here. */
    double point() {
        return terms.point(cube);
    }

    /** A value in what counts in the end: points of the game, or chance to win the match. */
    double total(double value) {
        return terms.inAll(value, cube);
    }
}
