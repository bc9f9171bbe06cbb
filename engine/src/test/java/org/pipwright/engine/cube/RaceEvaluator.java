package org.pipwright.engine.cube;

import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/** Smooth made-up chances, so that searches have something to compare: from pips and borne-off checkers only. */
public final class RaceEvaluator implements PositionEvaluator {
    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        double lead = Planes.pips(planes, at + Planes.SIDE) - Planes.pips(planes, at) + 4;
        float win = (float) (1 / (1 + Math.exp(-lead / 12)));
        float gammon = (Planes.occupied(planes, at + Planes.SIDE) & 1) == 0 ? 0.3f : 0;
        float lost = (Planes.occupied(planes, at) & 1) == 0 ? 0.2f : 0;
        out[outAt] = win * (1 - gammon);
        out[outAt + 1] = win * gammon;
        out[outAt + 2] = 0;
        out[outAt + 3] = (1 - win) * (1 - lost);
        out[outAt + 4] = (1 - win) * lost;
        out[outAt + 5] = 0;
    }
}
