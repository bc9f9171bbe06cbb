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

    /** A residual network of a width and so many blocks, whose blocks change about as much as they get. */
    public static ResidualNetwork residual(FeatureSet features, long seed, int width, int blocks) {
        SplittableRandom random = new SplittableRandom(seed);
        float limit = (float) Math.sqrt(3.0 / width);
        List<ResidualNetwork.Block> made = new ArrayList<>();
        for (int k = 0; k < blocks; k++) {
            made.add(new ResidualNetwork.Block(layer(random, width, width, limit), layer(random, width, width, limit)));
        }
        Layer input = layer(random, features.inputs(), width);
        return new ResidualNetwork(features, input, made, layer(random, width, Outcomes.COUNT, 2 * limit));
    }

    private static Layer layer(SplittableRandom random, int inputs, int outputs, float limit) {
        return new Layer(inputs, outputs, floats(random, inputs * outputs, limit), floats(random, outputs, limit));
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
