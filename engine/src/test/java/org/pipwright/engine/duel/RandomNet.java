package org.pipwright.engine.duel;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Network;

/** Small nets with random weights: no strength, but a definite opinion on every position. */
final class RandomNet {
    private RandomNet() {}

    static Model of(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return new Model(
                network(random, FeatureSet.CONTACT_1, 8),
                network(random, FeatureSet.RACE_1, 5),
                Map.of("seed", "" + seed));
    }

    static Entrant entrant(long seed) {
        return Entrant.ofModel("net " + seed, of(seed), 0);
    }

    private static Network network(SplittableRandom random, FeatureSet features, int hidden) {
        List<Layer> layers = new ArrayList<>();
        layers.add(layer(random, features.inputs(), hidden));
        layers.add(layer(random, hidden, 6));
        return new Network(features, layers);
    }

    private static Layer layer(SplittableRandom random, int inputs, int outputs) {
        float[] weights = new float[inputs * outputs];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = (float) random.nextDouble(-0.5, 0.5);
        }
        return new Layer(inputs, outputs, weights, new float[outputs]);
    }
}
