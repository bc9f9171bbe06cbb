package org.pipwright.training.learner;

import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.network.Layer;

/**
 * One layer as the sparse learner keeps it: a row an input and a last row for the bias, padded to {@link #width}; and
 * Adam's running means in arrays of the same shape. The padding is 0 and stays 0, since its gradient is.
 */
final class SparseLayer {
    final int inputs;
    final int outputs;
    final int width;
    final float[] weights;
    final float[] mean;
    final float[] square;

    /** Rows whose running means are not all 0. */
    final boolean[] moving;

    /** The running mean of the weights over past steps, or null if none is kept. */
    final float[] average;

    /**
     * The weights the other way round, a row an output and without biases, for going backwards; see {@link #transpose}.
     * Null for the first layer, beyond which nothing goes.
     */
    final float[] transposed;

    final int transposedWidth;

    SparseLayer(Layer layer, boolean averaging, boolean first) {
        inputs = layer.inputs();
        outputs = layer.outputs();
        width = padded(outputs);
        weights = new float[(inputs + 1) * width];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(layer.weights(), i * outputs, weights, i * width, outputs);
        }
        System.arraycopy(layer.biases(), 0, weights, inputs * width, outputs);
        mean = new float[weights.length];
        square = new float[weights.length];
        moving = new boolean[inputs + 1];
        average = averaging ? weights.clone() : null;
        transposedWidth = padded(inputs);
        transposed = first ? null : new float[outputs * transposedWidth];
        transpose();
    }

    private static int padded(int length) {
        return (length + LayerKernel.LANES - 1) / LayerKernel.LANES * LayerKernel.LANES;
    }

    /** Brings {@link #transposed} up to date; to be called after the weights have changed. */
    void transpose() {
        if (transposed == null) {
            return;
        }
        for (int i = 0; i < inputs; i++) {
            for (int j = 0; j < outputs; j++) {
                transposed[j * transposedWidth + i] = weights[i * width + j];
            }
        }
    }

    /** The layer for others: the average where one is kept. */
    Layer toLayer() {
        float[] from = average != null ? average : weights;
        float[] packed = new float[inputs * outputs];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(from, i * width, packed, i * outputs, outputs);
        }
        return new Layer(inputs, outputs, packed, Arrays.copyOfRange(from, inputs * width, inputs * width + outputs));
    }

    /** The arrays that make up its state, themselves. */
    List<float[]> arrays() {
        return average != null ? List.of(weights, mean, square, average) : List.of(weights, mean, square);
    }

    private boolean zero(float[] array, int row) {
        for (int i = row * width; i < (row + 1) * width; i++) {
            if (array[i] != 0) {
                return false;
            }
        }
        return true;
    }

    void restore(List<float[]> state) {
        List<float[]> mine = arrays();
        for (int i = 0; i < mine.size(); i++) {
            if (state.get(i).length != mine.get(i).length) {
                throw new IllegalArgumentException(
                        "a layer of " + mine.get(i).length + " numbers cannot be restored from " + state.get(i).length);
            }
            System.arraycopy(state.get(i), 0, mine.get(i), 0, mine.get(i).length);
        }
        // A row whose means have fallen to 0 need not be told from one that never had any.
        for (int row = 0; row <= inputs; row++) {
            moving[row] = !zero(mean, row) || !zero(square, row);
        }
        transpose();
    }
}
