package org.pipwright.engine.network;

import java.util.Arrays;

/** Products in plain Java: what the others are compared with. */
final class PlainProduct extends Product {
    /** One array an input: C2 vectorises loops over these by itself. */
    private final float[][] weights;

    private final float[] biases;

    PlainProduct(Layer layer) {
        super(layer);
        weights = new float[inputs][stride];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(layer.weights(), i * layer.outputs(), weights[i], 0, layer.outputs());
        }
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

    @Override
    void add(float[] x, int rows, float[] out) {
        for (int r = 0; r < rows; r++) {
            float[] sums = sums(x, r);
            for (int j = 0; j < stride; j++) {
                out[r * stride + j] += sums[j];
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

    private static void addScaled(float[] row, float scale, float[] out) {
        for (int j = 0; j < row.length; j++) {
            out[j] += scale * row[j];
        }
    }
}
