package org.pipwright.engine.network;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.rules.PossibleOutcomes;

/** A forward pass in double precision, layer by layer, on the encoded position. */
final class NaiveForward {
    private NaiveForward() {}

    static double[] chances(Network network, int[] planes, int at) {
        float[] encoded = new float[network.features().inputs()];
        network.features().encode(planes, at, encoded, 0);
        double[] x = new double[encoded.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = encoded[i];
        }
        for (Layer layer : network.layers()) {
            boolean last = layer == network.layers().get(network.layers().size() - 1);
            x = through(layer, x, last);
        }
        return softmax(x, PossibleOutcomes.of(planes, at));
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
