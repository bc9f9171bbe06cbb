package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.roll.Roll;

/**
 * The mean over the 21 rolls, each by its probability, of six chances and of what each of some cubes is worth; added up in
 * double and in the order of the rolls.
 */
final class RollMean {
    static final int THROWS = 36;

    private final double[] sums = new double[Outcomes.COUNT];
    private final double[] worth;

    RollMean(int cubes) {
        worth = new double[cubes];
    }

    /** Adds the best reply to a roll for cubeless points. */
    void add(int roll, float[] chances, int at) {
        int ways = Roll.all().get(roll).ways();
        for (int k = 0; k < Outcomes.COUNT; k++) {
            sums[k] += ways * (double) chances[at + k];
        }
    }

    /** Adds what the best reply to a roll is worth with a cube. */
    void add(int roll, int cube, double value) {
        worth[cube] += Roll.all().get(roll).ways() * value;
    }

    /** Writes the means for position k of a batch. */
    void write(Batch batch, int k) {
        for (int i = 0; i < Outcomes.COUNT; i++) {
            batch.chances[k * Outcomes.COUNT + i] = (float) (sums[i] / THROWS);
        }
        for (int i = 0; i < worth.length; i++) {
            batch.rolling[k * worth.length + i] = worth[i] / THROWS;
        }
    }
}
