package org.pipwright.bench;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.rules.PossibleOutcomes;

/** A forward pass in double precision on the encoded position: what every way of inference is compared with. */
public final class DoubleForward {
    private DoubleForward() {}

    /** The six scores before the softmax. */
    public static double[] scores(Network network, int[] planes, int at) {
        float[] encoded = new float[network.features().inputs()];
        network.features().encode(planes, at, encoded, 0);
        double[] x = new double[encoded.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = encoded[i];
        }
        for (int l = 0; l < network.layers().size(); l++) {
            boolean last = l == network.layers().size() - 1;
            x = through(network.layers().get(l), x, last);
        }
        return x;
    }

    private static double[] through(Layer layer, double[] x, boolean last) {
        double[] y = new double[layer.outputs()];
        for (int j = 0; j < y.length; j++) {
            y[j] = layer.biases()[j];
            for (int i = 0; i < x.length; i++) {
                y[j] += x[i] * layer.weights()[i * y.length + j];
            }
            y[j] = last ? y[j] : Math.max(0, y[j]);
        }
        return y;
    }

    /** The six chances. */
    public static double[] chances(Network network, int[] planes, int at) {
        double[] scores = scores(network, planes, at);
        int possible = PossibleOutcomes.of(planes, at);
        double sum = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            scores[k] = (possible & 1 << k) != 0 ? Math.exp(scores[k]) : 0;
            sum += scores[k];
        }
        for (int k = 0; k < Outcomes.COUNT; k++) {
            scores[k] /= sum;
        }
        return scores;
    }
}
