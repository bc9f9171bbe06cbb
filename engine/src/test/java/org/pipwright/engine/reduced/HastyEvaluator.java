package org.pipwright.engine.reduced;

import java.util.Arrays;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Planes;

/** Guesses single wins from the pip count and a whim that depends on the position: wrong often, always the same way. */
final class HastyEvaluator implements PositionEvaluator {
    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        int lead = Planes.pips(planes, at + Planes.SIDE) - Planes.pips(planes, at);
        int hash = Arrays.hashCode(Arrays.copyOfRange(planes, at, at + Planes.STRIDE)) * 0x9E3779B1;
        double whim = (hash >>> 16) / 65536.0 - 0.5;
        double win = 1 / (1 + Math.exp(-(lead / 12.0 + whim)));
        Arrays.fill(out, outAt, outAt + 6, 0);
        out[outAt] = (float) win;
        out[outAt + 3] = 1 - (float) win;
    }
}
