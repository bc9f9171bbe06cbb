package org.pipwright.engine.explain;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/** Chances from the pip counts alone, with gammons but no backgammons; enough to prefer some plays to others. */
final class PipEvaluator implements PositionEvaluator {
    private static final double GAMMONS = 0.2;

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        double lead = Planes.pips(planes, at + Planes.SIDE) - Planes.pips(planes, at);
        double win = 1 / (1 + Math.exp(-lead / 20));
        double[] chances = {win * (1 - GAMMONS), win * GAMMONS, 0, (1 - win) * (1 - GAMMONS), (1 - win) * GAMMONS, 0};
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] = (float) chances[k];
        }
    }
}
