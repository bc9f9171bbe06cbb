package org.pipwright.engine.network;

import java.util.Arrays;

/** Sparse products in plain Java: what the others are compared with. Each input has its row of weights to itself. */
final class PlainSparseProduct extends SparseProduct {
    private final float[][] rows;

    private final float[] biases;

    PlainSparseProduct(Layer layer) {
        super(layer);
        rows = new float[inputs][];
        for (int i = 0; i < inputs; i++) {
            rows[i] = Arrays.copyOfRange(layer.weights(), i * outputs, (i + 1) * outputs);
        }
        biases = layer.biases();
    }

    @Override
    void add(float[] x, int count, ActiveInputs active, float[] out) {
        float[] sums = new float[outputs];
        float[][] ofInput = new float[4][];
        float[] scales = new float[4];
        for (int r = 0; r < count; r++) {
            active.clear();
            active.add(x, r * inputs, inputs);
            System.arraycopy(out, r * outputs, sums, 0, outputs);
            PlainProduct.addScaled(biases, 1, sums);
            int k = active.from(0);
            for (; k + 4 <= active.to(0); k += 4) {
                for (int n = 0; n < 4; n++) {
                    int i = active.indices[k + n];
                    ofInput[n] = rows[i];
                    scales[n] = x[r * inputs + i];
                }
                PlainProduct.addFourScaled(ofInput, scales, 0, sums);
            }
            for (; k < active.to(0); k++) {
                int i = active.indices[k];
                PlainProduct.addScaled(rows[i], x[r * inputs + i], sums);
            }
            System.arraycopy(sums, 0, out, r * outputs, outputs);
        }
    }
}
