package org.pipwright.engine.network;

import java.util.Arrays;

/** A layer after the first, laid out for the kernels: input-major rows, padded with zeros to whole vectors. */
final class PackedLayer {
    final int inputs;
    final int outputs;
    /** Padded number of outputs; the stride of {@link #weights}. */
    final int width;

    final float[] weights;
    /** The same weights, one array an input: C2 vectorises loops over these by itself, but not over {@link #weights}. */
    final float[][] rows;

    final float[] biases;

    PackedLayer(Layer layer) {
        inputs = layer.inputs();
        outputs = layer.outputs();
        width = Network.padded(outputs);
        weights = new float[Network.padded(inputs) * width];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(layer.weights(), i * outputs, weights, i * width, outputs);
        }
        rows = new float[inputs][];
        for (int i = 0; i < inputs; i++) {
            rows[i] = Arrays.copyOfRange(weights, i * width, (i + 1) * width);
        }
        biases = Arrays.copyOf(layer.biases(), width);
    }
}
