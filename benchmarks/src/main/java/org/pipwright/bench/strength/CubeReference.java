package org.pipwright.bench.strength;

import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;

/**
 * One line of a file of references for the cube: a decision with what its actions are worth to the side on roll, points per
 * unit of the cube or chances to win the match.
 *
 * @param decision what is decided
 * @param trials games of rolling and of a double that is taken
 * @param point what a point is worth in the unit of the values
 * @param noDouble of rolling
 * @param noDoubleError its standard error
 * @param take of a double that is taken
 * @param takeError its standard error
 * @param pass of a double that is passed
 */
record CubeReference(
        CubeDecision decision,
        int trials,
        double point,
        double noDouble,
        double noDoubleError,
        double take,
        double takeError,
        double pass) {
    int id() {
        return decision.id();
    }

    private double doubled() {
        return Math.min(take, pass);
    }

    /** Points that the side on roll loses if it doubles where a judge does. */
    double lostDoubling(CubeValues judged) {
        double chosen = judged.shouldDouble() ? doubled() : noDouble;
        return (Math.max(noDouble, doubled()) - chosen) / point;
    }

    /** Points that the other side loses if it answers a double as a judge does. */
    double lostAnswering(CubeValues judged) {
        double chosen = judged.answer() == CubeAction.PASS ? pass : take;
        return (chosen - doubled()) / point;
    }

    /** Standard error of what doubling is better than rolling, in points, as if the two had dice of their own. */
    double error() {
        return (take < pass ? Math.hypot(noDoubleError, takeError) : noDoubleError) / point;
    }
}
