package org.pipwright.engine.drill;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/**
 * Made-up chances that lean towards what players value: pips, made points, checkers on the bar, few blots. Quick, and the
 * same everywhere.
 */
final class LeaningEvaluator implements PositionEvaluator {
    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        double lead = worth(planes, at) - worth(planes, at + Planes.SIDE) + 4;
        float win = (float) (1 / (1 + Math.exp(-lead / 20)));
        float gammon = Planes.count(planes, at + Planes.SIDE, Planes.OFF) == 0 ? 0.25f : 0;
        float lost = Planes.count(planes, at, Planes.OFF) == 0 ? 0.25f : 0;
        out[outAt] = win * (1 - gammon);
        out[outAt + 1] = win * gammon;
        out[outAt + 2] = 0;
        out[outAt + 3] = (1 - win) * (1 - lost);
        out[outAt + 4] = (1 - win) * lost;
        out[outAt + Outcomes.COUNT - 1] = 0;
    }

    private static double worth(int[] planes, int side) {
        int made = Planes.held(planes, side) & Planes.POINTS;
        int blots = planes[side] & ~Planes.held(planes, side) & Planes.POINTS;
        return -Planes.pips(planes, side)
                + 5 * Integer.bitCount(made & Planes.HOME)
                + 3 * Integer.bitCount(made)
                - 4 * Integer.bitCount(blots)
                - 6 * Planes.count(planes, side, Planes.BAR);
    }
}
