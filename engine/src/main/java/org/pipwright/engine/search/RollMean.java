package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.roll.Roll;

/** The mean of six chances over the 21 rolls, each by its probability; added up in double and in the order of the rolls. */
final class RollMean {
    static final int THROWS = 36;

    private final double[] sums = new double[Outcomes.COUNT];

    void add(int roll, float[] chances, int at) {
        int ways = Roll.all().get(roll).ways();
        for (int k = 0; k < Outcomes.COUNT; k++) {
            sums[k] += ways * (double) chances[at + k];
        }
    }

    void write(float[] out, int outAt) {
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] = (float) (sums[k] / THROWS);
        }
    }
}
