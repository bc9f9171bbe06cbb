package org.pipwright.training.cuda;

import java.util.SplittableRandom;
import org.pipwright.engine.rules.PossibleOutcomes;

/** Weights, positions' targets and the like, at random. */
final class Weights {
    private Weights() {}

    static float[] random(int count, long seed, double least, double most) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] values = new float[count];
        for (int i = 0; i < count; i++) {
            values[i] = (float) (least + (most - least) * random.nextDouble());
        }
        return values;
    }

    /** Weights of a network in which every tensor matters, biases too; the columns without an outcome are 0. */
    static float[] of(ResidualShape shape) {
        float[] weights = shape.initial(new SplittableRandom(3));
        float[] more = random(weights.length, 4, -0.05, 0.05);
        for (int i = 0; i < weights.length; i++) {
            weights[i] += more[i];
        }
        for (int i = 0; i < shape.width(); i++) {
            weights[shape.output() + i * ResidualShape.OUTPUTS + 6] = 0;
            weights[shape.output() + i * ResidualShape.OUTPUTS + 7] = 0;
        }
        weights[shape.outputBias() + 6] = 0;
        weights[shape.outputBias() + 7] = 0;
        return weights;
    }

    /** Random chances that are possible in each position. */
    static float[] targets(int[] planes, int count) {
        float[] raw = random(6 * count, 9, 0.01, 1);
        for (int i = 0; i < count; i++) {
            int possible = PossibleOutcomes.of(planes, 8 * i);
            float sum = 0;
            for (int k = 0; k < 6; k++) {
                raw[6 * i + k] *= possible >> k & 1;
                sum += raw[6 * i + k];
            }
            for (int k = 0; k < 6; k++) {
                raw[6 * i + k] /= sum;
            }
        }
        return raw;
    }
}
