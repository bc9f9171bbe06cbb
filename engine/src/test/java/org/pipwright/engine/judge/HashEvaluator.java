package org.pipwright.engine.judge;

import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;

/** Chances drawn from a position's hash: no two positions alike, and nothing to do with backgammon. */
final class HashEvaluator implements PositionEvaluator {
    @Override
    public void evaluate(int[] planes, int at, float[] out, int outAt) {
        SplittableRandom random =
                new SplittableRandom(Position.ofPlanes(planes, at).hashCode());
        double[] drawn = random.doubles(Outcomes.COUNT, 0, 1).toArray();
        double sum = java.util.Arrays.stream(drawn).sum();
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] = (float) (drawn[k] / sum);
        }
    }
}
