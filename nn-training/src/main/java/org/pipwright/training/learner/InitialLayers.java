package org.pipwright.training.learner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;

/**
 * Random networks to start from: weights uniform with variance 2 / inputs (He, Zhang, Ren, Sun, ICCV 2015, section 2.2),
 * the last layer's a tenth of that so that a new network holds all outcomes about equally likely; biases 0, and so are the
 * weights of pairs, which refine what a network makes of places.
 */
public final class InitialLayers {
    /** About this many inputs of a position are not 0, which is what matters for the first layer's sums. */
    private static final int ACTIVE_INPUTS = 45;

    private InitialLayers() {}

    /**
     * A random network.
     *
     * @param features what it reads
     * @param hidden sizes of its hidden layers, at least one
     * @param seed the same seed gives the same network
     * @return the network
     */
    public static Network network(FeatureSet features, List<Integer> hidden, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Layer> layers = new ArrayList<>();
        int inputs = features.inputs() - features.pairs();
        for (int outputs : hidden) {
            layers.add(layer(inputs, outputs, layers.isEmpty() ? ACTIVE_INPUTS : inputs, 1, random));
            inputs = outputs;
        }
        layers.add(layer(inputs, Outcomes.COUNT, inputs, 0.1, random));
        layers.set(0, withPairs(layers.get(0), features.pairs()));
        return new Network(features, layers);
    }

    /**
     * A network that gives the same chances and reads pairs besides, to be trained further.
     *
     * @param network a network that reads {@link FeatureSet#CONTACT_1}
     * @return one that reads {@link FeatureSet#CONTACT_2}
     * @throws IllegalArgumentException if it reads something else
     */
    public static Network withPairs(Network network) {
        if (network.features() != FeatureSet.CONTACT_1) {
            throw new IllegalArgumentException(
                    "pairs go with contact-1, not with " + network.features().label());
        }
        List<Layer> layers = new ArrayList<>(network.layers());
        layers.set(0, withPairs(layers.get(0), FeatureSet.CONTACT_2.pairs()));
        return new Network(FeatureSet.CONTACT_2, layers);
    }

    private static Layer withPairs(Layer first, int pairs) {
        int inputs = first.inputs() + pairs;
        return new Layer(
                inputs, first.outputs(), Arrays.copyOf(first.weights(), inputs * first.outputs()), first.biases());
    }

    private static Layer layer(int inputs, int outputs, int active, double scale, SplittableRandom random) {
        double bound = scale * Math.sqrt(3.0 * 2 / active);
        float[] weights = new float[inputs * outputs];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = (float) (bound * (2 * random.nextDouble() - 1));
        }
        return new Layer(inputs, outputs, weights, new float[outputs]);
    }
}
