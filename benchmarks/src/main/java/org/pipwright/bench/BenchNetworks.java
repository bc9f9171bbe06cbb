package org.pipwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.ResidualNetwork;

/** Networks of a usual shape with fixed random weights: speed does not depend on what they know. */
public final class BenchNetworks {
    private BenchNetworks() {}

    /** Contact network of 256 and 32 hidden units. */
    public static Network contact() {
        return random(FeatureSet.CONTACT_1, 1, 256, 32);
    }

    /** Race network of 64 hidden units. */
    public static Network race() {
        return random(FeatureSet.RACE_1, 2, 64);
    }

    /** Both networks as a model. */
    public static Model model() {
        return new Model(contact(), race(), Map.of("run", "fixed random weights"));
    }

    /**
     * A residual network for all positions.
     *
     * @param width numbers a layer
     * @param blocks number of blocks
     */
    public static ResidualNetwork residual(int width, int blocks) {
        SplittableRandom random = new SplittableRandom(3);
        Layer input = layer(random, FeatureSet.PLACES_1.inputs(), width);
        List<ResidualNetwork.Block> made = new ArrayList<>();
        for (int k = 0; k < blocks; k++) {
            made.add(new ResidualNetwork.Block(layer(random, width, width), layer(random, width, width)));
        }
        return new ResidualNetwork(FeatureSet.PLACES_1, input, made, layer(random, width, Outcomes.COUNT));
    }

    private static Network random(FeatureSet features, long seed, int... hidden) {
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

    /** Even weights up to sqrt(6 / inputs), which keeps sums about as large as inputs. */
    private static Layer layer(SplittableRandom random, int inputs, int outputs) {
        float limit = (float) Math.sqrt(6.0 / inputs);
        return new Layer(inputs, outputs, floats(random, inputs * outputs, limit), floats(random, outputs, 0.1f));
    }

    private static float[] floats(SplittableRandom random, int length, float limit) {
        float[] numbers = new float[length];
        for (int i = 0; i < length; i++) {
            numbers[i] = (float) (2 * random.nextDouble() - 1) * limit;
        }
        return numbers;
    }
}
