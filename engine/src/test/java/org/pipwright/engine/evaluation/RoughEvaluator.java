package org.pipwright.engine.evaluation;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;

/** Likes a lead in the race and adds noise of its own, so that two of them agree roughly; counts what it is asked. */
public final class RoughEvaluator implements PositionEvaluator {
    private final long seed;
    private final PositionEvaluator quick;
    private int asked;

    /** One without a quick evaluator, or before which another may drop results. */
    public RoughEvaluator(long seed, PositionEvaluator quick) {
        this.seed = seed;
        this.quick = quick == null ? this : quick;
    }

    @Override
    public PositionEvaluator quick() {
        return quick;
    }

    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        asked++;
        long hash = seed;
        for (int k = 0; k < Planes.STRIDE; k++) {
            hash = (hash ^ planes[at + k]) * 0xBF58476D1CE4E5B9L;
            hash ^= hash >>> 29;
        }
        double noise = (hash >>> 11) * 0x1p-53 - 0.5;
        double lead = (Planes.pips(planes, at + Planes.SIDE) - Planes.pips(planes, at)) / 375.0;
        float win = (float) Math.max(0, Math.min(1, 0.5 + 0.4 * lead + 0.1 * noise));
        Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
        out[outAt] = win;
        out[outAt + Outcomes.COUNT / 2] = 1 - win;
    }

    /** How many positions it has valued. */
    public int asked() {
        return asked;
    }
}
