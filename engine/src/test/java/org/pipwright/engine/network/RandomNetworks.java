package org.pipwright.engine.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;

/** Networks with random weights of about the size that training gives, so that sums and chances are spread widely. */
public final class RandomNetworks {
    private RandomNetworks() {}

    /** A network with hidden layers of given widths. */
    public static Network of(FeatureSet features, long seed, int... hidden) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Layer> layers = new ArrayList<>();
        int inputs = features.inputs();
        for (int width : hidden) {
            layers.add(layer(random, inputs, width));
            inputs = width;
        }
        layers.add(layer(random, inputs, Outcomes.COUNT));
        return new Network(features, layers);
    }

    /** A layer with weights and biases of both signs. */
    static Layer layer(SplittableRandom random, int inputs, int outputs) {
        return new Layer(inputs, outputs, floats(random, inputs * outputs, 0.4f), floats(random, outputs, 0.4f));
    }

    /** Numbers spread evenly between -limit and limit. */
    static float[] floats(SplittableRandom random, int length, float limit) {
        float[] numbers = new float[length];
        for (int i = 0; i < length; i++) {
            numbers[i] = (float) (2 * random.nextDouble() - 1) * limit;
        }
        return numbers;
    }

    /** A small model with both networks and one note. */
    public static Model model(long seed) {
        return new Model(
                of(FeatureSet.CONTACT_1, seed, 20, 8), of(FeatureSet.RACE_1, seed + 1, 12), Map.of("run", "test"));
    }
}
