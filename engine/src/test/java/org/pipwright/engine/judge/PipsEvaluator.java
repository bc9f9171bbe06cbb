package org.pipwright.engine.judge;

import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/** Made-up chances by the pip counts and the number of own blots: enough to tell plays apart, and wrong in races. */
final class PipsEvaluator implements PositionEvaluator {
    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        int them = at + Planes.SIDE;
        double lead = Planes.pips(planes, them) - Planes.pips(planes, at) + 4 + blots(planes, them) - blots(planes, at);
        float win = (float) (1 / (1 + Math.exp(-lead / 25)));
        out[outAt] = win * 0.75f;
        out[outAt + 1] = win * 0.25f;
        out[outAt + 2] = 0;
        out[outAt + 3] = (1 - win) * 0.75f;
        out[outAt + 4] = (1 - win) * 0.25f;
        out[outAt + 5] = 0;
    }

    private static int blots(int[] planes, int side) {
        int blots = 0;
        for (int point = 1; point <= 24; point++) {
            blots += Planes.count(planes, side, point) == 1 ? 1 : 0;
        }
        return blots;
    }
}
