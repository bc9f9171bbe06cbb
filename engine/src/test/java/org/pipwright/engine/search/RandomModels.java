package org.pipwright.engine.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Network;

/** Models with random weights: they play badly, but they tell positions apart. */
public final class RandomModels {
    private RandomModels() {}

    /** A model with the given hidden layers for contact and for races. */
    public static Model of(long seed, int... hidden) {
        SplittableRandom random = new SplittableRandom(seed);
        return new Model(
                network(FeatureSet.CONTACT_1, random, hidden), network(FeatureSet.RACE_1, random, hidden), Map.of());
    }

    private static Network network(FeatureSet features, SplittableRandom random, int... hidden) {
        List<Layer> layers = new ArrayList<>();
        int inputs = features.inputs();
        for (int outputs : hidden) {
            layers.add(layer(random, inputs, outputs));
            inputs = outputs;
        }
        layers.add(layer(random, inputs, Outcomes.COUNT));
        return new Network(features, layers);
    }

    private static Layer layer(SplittableRandom random, int inputs, int outputs) {
        float[] weights = new float[inputs * outputs];
        double spread = 2 / Math.sqrt(inputs);
        for (int i = 0; i < weights.length; i++) {
            weights[i] = (float) ((2 * random.nextDouble() - 1) * spread);
        }
        return new Layer(inputs, outputs, weights, new float[outputs]);
    }
}
