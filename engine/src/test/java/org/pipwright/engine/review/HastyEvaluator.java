package org.pipwright.engine.review;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/** Chances from pips, checkers back and blots; with gammons, so that scores and the Jacoby rule matter. */
final class HastyEvaluator implements PositionEvaluator {
    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        double lead = strength(planes, at) - strength(planes, at + Planes.SIDE);
        double win = 1 / (1 + Math.exp(-lead / 18));
        double mine = 0.1 + 0.4 * win;
        double theirs = 0.1 + 0.4 * (1 - win);
        double[] chances = {win * (1 - mine), win * mine, 0, (1 - win) * (1 - theirs), (1 - win) * theirs, 0};
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] = (float) chances[k];
        }
    }

    private static double strength(int[] planes, int side) {
        int blots = Integer.bitCount(planes[side] & ~Planes.held(planes, side) & Planes.POINTS);
        return -Planes.pips(planes, side) - 1.5 * blots;
    }
}
