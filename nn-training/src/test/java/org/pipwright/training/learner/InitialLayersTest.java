package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;

/** Random networks to start from. */
class InitialLayersTest {
    private static Network network(long seed) {
        return InitialLayers.network(FeatureSet.CONTACT_1, List.of(256, 128), seed);
    }

    private static double variance(Layer layer) {
        double sum = 0;
        for (float weight : layer.weights()) {
            sum += (double) weight * weight;
        }
        return sum / layer.weights().length;
    }

    @Test
    void sameSeedSameNetwork() {
        for (int l = 0; l < 3; l++) {
            float[] weights = network(1).layers().get(l).weights();
            assertArrayEquals(weights, network(1).layers().get(l).weights());
            assertFalse(Arrays.equals(weights, network(2).layers().get(l).weights()));
        }
    }

    /** 2 / inputs, with about 45 inputs of a position not 0; the last layer a tenth as wide. */
    @Test
    void variances() {
        List<Layer> layers = network(1).layers();
        assertEquals(2.0 / 45, variance(layers.get(0)), 0.03 * 2 / 45);
        assertEquals(2.0 / 256, variance(layers.get(1)), 0.03 * 2 / 256);
        assertEquals(0.01 * 2 / 128, variance(layers.get(2)), 0.1 * 0.01 * 2 / 128);
        for (Layer layer : layers) {
            assertArrayEquals(new float[layer.outputs()], layer.biases());
        }
    }

    /** Pairs start with no say: the chances are those of the same network without them. */
    @Test
    void pairsBeginAtNothing() {
        Network without = network(1);
        Network with = InitialLayers.network(FeatureSet.CONTACT_2, List.of(256, 128), 1);
        Network widened = InitialLayers.withPairs(without);
        assertEquals("1570-256-128-6", with.shape());
        for (int l = 0; l < 3; l++) {
            float[] plain = without.layers().get(l).weights();
            float[] paired = with.layers().get(l).weights();
            assertArrayEquals(plain, Arrays.copyOf(paired, plain.length));
            assertArrayEquals(
                    new float[paired.length - plain.length], Arrays.copyOfRange(paired, plain.length, paired.length));
            assertArrayEquals(paired, widened.layers().get(l).weights());
        }
        assertEquals(FeatureSet.CONTACT_2, widened.features());
    }
}
