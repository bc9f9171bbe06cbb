package org.pipwright.training.learner;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.selfplay.Samples;

/**
 * One share of a batch: forward and backward through all layers, sample by sample, adding to its own gradients. A hidden
 * unit that is cut off at 0 is left out of the next layer's list, and so costs nothing there in either direction.
 */
final class SparsePass {
    private final FeatureSet features;
    private final List<SparseLayer> layers;
    private final LayerKernel kernel;

    /** By layer: its inputs that are not 0 (the bias last), its output and the gradients. */
    private final int[][] index;

    private final float[][] value;
    private final int[] listed;
    private final float[][] out;
    private final float[][] delta;
    final float[][] gradients;

    /** Rows of the first layer whose gradients may not be 0, since they were last cleared; the bias's is the last. */
    final boolean[] touched;

    private final float[] backwards;

    /** 0, 1, 2 ...: the list of all units. */
    private final int[] all;

    SparsePass(FeatureSet features, List<SparseLayer> layers, LayerKernel kernel) {
        this.features = features;
        this.layers = layers;
        this.kernel = kernel;
        int depth = layers.size();
        index = new int[depth][];
        value = new float[depth][];
        listed = new int[depth];
        out = new float[depth][];
        delta = new float[depth][];
        gradients = new float[depth][];
        int widest = 0;
        int most = 0;
        for (int l = 0; l < depth; l++) {
            SparseLayer layer = layers.get(l);
            index[l] = new int[layer.inputs + 1];
            value[l] = new float[layer.inputs + 1];
            out[l] = new float[layer.width];
            delta[l] = new float[layer.width];
            gradients[l] = new float[layer.weights.length];
            widest = Math.max(widest, l == 0 ? 0 : layer.transposedWidth);
            most = Math.max(most, layer.outputs);
        }
        touched = new boolean[layers.get(0).inputs + 1];
        backwards = new float[widest];
        all = IntStream.range(0, most).toArray();
    }

    /**
     * Adds the gradients of some samples.
     *
     * @return sum of their cross-entropies in nats
     */
    double run(Samples samples, int[] order, int from, int to) {
        double loss = 0;
        for (int i = from; i < to; i++) {
            int at = order[i] * Planes.STRIDE;
            forward(samples.planes(), at);
            int last = layers.size() - 1;
            int possible = PossibleOutcomes.of(samples.planes(), at);
            loss += MaskedSoftmax.lossAndDelta(
                    out[last], possible, samples.targets(), order[i] * Outcomes.COUNT, delta[last]);
            backward();
        }
        return loss;
    }

    private void forward(int[] planes, int at) {
        int n = features.list(planes, at, index[0], value[0]);
        for (int l = 0; l < layers.size(); l++) {
            SparseLayer layer = layers.get(l);
            index[l][n] = layer.inputs;
            value[l][n++] = 1;
            listed[l] = n;
            kernel.forward(index[l], value[l], n, layer.weights, layer.width, out[l]);
            n = l + 1 < layers.size() ? list(out[l], layer.outputs, index[l + 1], value[l + 1]) : 0;
        }
    }

    /** Lists what is above 0; written without a branch, which would be mispredicted half of the time. */
    private static int list(float[] out, int length, int[] index, float[] value) {
        int n = 0;
        for (int j = 0; j < length; j++) {
            index[n] = j;
            value[n] = out[j];
            n += out[j] > 0 ? 1 : 0;
        }
        return n;
    }

    private void backward() {
        for (int l = layers.size() - 1; l >= 0; l--) {
            SparseLayer layer = layers.get(l);
            kernel.addGradient(index[l], value[l], listed[l], delta[l], layer.width, gradients[l]);
            if (l == 0) {
                for (int r = 0; r < listed[0]; r++) {
                    touched[index[0][r]] = true;
                }
            } else {
                kernel.forward(all, delta[l], layer.outputs, layer.transposed, layer.transposedWidth, backwards);
                Arrays.fill(delta[l - 1], 0);
                for (int r = 0; r < listed[l] - 1; r++) {
                    int unit = index[l][r];
                    delta[l - 1][unit] = backwards[unit];
                }
            }
        }
    }
}
