package org.pipwright.engine.network;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.rules.PossibleOutcomes;

/** A forward pass in double precision, layer by layer, on the encoded position. */
public final class NaiveForward {
    private NaiveForward() {}

    /** The six chances. */
    public static double[] chances(Network network, int[] planes, int at) {
        return softmax(scores(network, planes, at), PossibleOutcomes.of(planes, at));
    }

    /** The six scores before the softmax. */
    public static double[] scores(Network network, int[] planes, int at) {
        double[] x = encoded(network.features(), planes, at);
        for (Layer layer : network.layers()) {
            x = product(layer, x);
            boolean last = layer == network.layers().get(network.layers().size() - 1);
            x = last ? x : positive(x);
        }
        return x;
    }

    static double[] chances(ResidualNetwork network, int[] planes, int at) {
        double[] h = product(network.input(), encoded(network.features(), planes, at));
        for (ResidualNetwork.Block block : network.blocks()) {
            double[] change = product(block.b(), positive(product(block.a(), norm(h))));
            for (int j = 0; j < h.length; j++) {
                h[j] += change[j];
            }
        }
        return softmax(product(network.output(), norm(h)), PossibleOutcomes.of(planes, at));
    }

    static double[] norm(double[] x) {
        double mean = Arrays.stream(x).average().getAsDouble();
        double variance =
                Arrays.stream(x).map(v -> (v - mean) * (v - mean)).average().getAsDouble();
        return Arrays.stream(x)
                .map(v -> (v - mean) / Math.sqrt(variance + 1e-5))
                .toArray();
    }

    private static double[] encoded(FeatureSet features, int[] planes, int at) {
        float[] encoded = new float[features.inputs()];
        features.encode(planes, at, encoded, 0);
        double[] x = new double[encoded.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = encoded[i];
        }
        return x;
    }

    private static double[] positive(double[] x) {
        return Arrays.stream(x).map(v -> Math.max(0, v)).toArray();
    }

    static double[] product(Layer layer, double[] x) {
        double[] y = new double[layer.outputs()];
        for (int j = 0; j < y.length; j++) {
            y[j] = layer.biases()[j];
            for (int i = 0; i < x.length; i++) {
                y[j] += x[i] * layer.weights()[i * y.length + j];
            }
        }
        return y;
    }

    private static double[] softmax(double[] scores, int possible) {
        double[] chances = new double[Outcomes.COUNT];
        double sum = 0;
        for (int k = 0; k < chances.length; k++) {
            chances[k] = (possible & 1 << k) != 0 ? Math.exp(scores[k]) : 0;
            sum += chances[k];
        }
        for (int k = 0; k < chances.length; k++) {
            chances[k] /= sum;
        }
        return chances;
    }
}
