package org.pipwright.engine.network;

import java.util.Arrays;

/** Products in plain Java: what the others are compared with. */
final class PlainProduct extends Product {
    /** One array an input: C2 vectorises loops over these by itself. */
    private final float[][] weights;

    private final float[] biases;

    PlainProduct(Layer layer) {
        super(layer);
        weights = layer.rows(stride);
        biases = Arrays.copyOf(layer.biases(), stride);
    }

    @Override
    void set(float[] x, int rows, float floor, float[] out) {
        for (int r = 0; r < rows; r++) {
            float[] sums = sums(x, r);
            for (int j = 0; j < stride; j++) {
                out[r * stride + j] = Math.max(floor, sums[j]);
            }
        }
    }

    private float[] sums(float[] x, int row) {
        float[] sums = biases.clone();
        for (int i = 0; i < inputs; i++) {
            addScaled(weights[i], x[row * inputs + i], sums);
        }
        return sums;
    }

    /** Adds {@code scale} times a row to as many sums. */
    static void addScaled(float[] row, float scale, float[] out) {
        for (int j = 0; j < row.length; j++) {
            out[j] += scale * row[j];
        }
    }
}
