package org.pipwright.engine.review;

import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * What positions after a play are worth to the side that has played, with the cube where it stands: the opponent's best
 * cube action comes next.
 */
final class Worth {
    private final CubeTerms terms;
    private final CubeState cube;

    /** Worth under given terms and with a given cube, both seen from the side that plays. */
    Worth(CubeTerms terms, CubeState cube) {
        this.terms = terms;
        this.cube = cube;
    }

    /** By the model, at given chances of the side that has played. */
    double at(Play play, Outcomes outcomes) {
        Position next = play.next();
        return next.finished()
                ? won(next)
                : terms.toOther(terms.swapped().best(next, outcomes.swapped(), cube.swapped()));
    }

    private double won(Position next) {
        return terms.won(GameResult.of(next), cube);
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
