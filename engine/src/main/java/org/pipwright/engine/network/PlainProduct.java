package org.pipwright.engine.network;

import java.util.Arrays;

/**
 * Products in plain Java: what the others are compared with. They use the layer's weights where they lie, since a copy of a
 * large layer would take longer than a single product with it, in a JVM that has just started.
 */
final class PlainProduct extends Product {
    private final int outputs;
    private final float[] weights;
    private final float[] biases;

    PlainProduct(Layer layer) {
        super(layer);
        outputs = layer.outputs();
        weights = layer.weights();
        biases = Arrays.copyOf(layer.biases(), stride);
    }

    @Override
    void set(float[] x, int rows, float floor, float[] out) {
        float[][] sums = new float[rows][];
        for (int r = 0; r < rows; r++) {
            sums[r] = biases.clone();
        }
        float[] ofInput = new float[stride];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(weights, i * outputs, ofInput, 0, outputs);
            for (int r = 0; r < rows; r++) {
                addScaled(ofInput, x[r * inputs + i], sums[r]);
            }
        }
        for (int r = 0; r < rows; r++) {
            for (int j = 0; j < stride; j++) {
                out[r * stride + j] = Math.max(floor, sums[r][j]);
            }
        }
    }

    /** Adds {@code scale} times a row to as many sums: whole arrays, whose loops C2 vectorises by itself. */
    static void addScaled(float[] row, float scale, float[] out) {
        for (int j = 0; j < row.length; j++) {
            out[j] += scale * row[j];
        }
    }
}
