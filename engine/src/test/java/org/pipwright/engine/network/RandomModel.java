package org.pipwright.engine.network;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;

/** A tiny model with random weights: knows nothing of the game, on purpose. */
public final class RandomModel {
    private static final int HIDDEN = 4;

    private RandomModel() {}

    /** The model of a seed. */
    public static Model of(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return new Model(
                network(FeatureSet.CONTACT_1, random),
                network(FeatureSet.RACE_1, random),
                Map.of("run", "random-" + seed));
    }

    private static Network network(FeatureSet features, SplittableRandom random) {
        return new Network(
                features, List.of(layer(features.inputs(), HIDDEN, random), layer(HIDDEN, Outcomes.COUNT, random)));
    }

    private static Layer layer(int inputs, int outputs, SplittableRandom random) {
        return new Layer(inputs, outputs, numbers(inputs * outputs, random), numbers(outputs, random));
    }

    private static float[] numbers(int count, SplittableRandom random) {
        float[] numbers = new float[count];
        for (int i = 0; i < count; i++) {
            numbers[i] = (float) random.nextDouble(-0.5, 0.5);
        }
        return numbers;
    }
}
