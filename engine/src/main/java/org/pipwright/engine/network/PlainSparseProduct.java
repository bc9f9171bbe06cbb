package org.pipwright.engine.network;

/** Sparse products in plain Java: what the others are compared with. */
final class PlainSparseProduct extends SparseProduct {
    private final float[] weights;

    private final float[] biases;

    PlainSparseProduct(Layer layer) {
        super(layer);
        weights = layer.weights();
        biases = layer.biases();
    }

    @Override
    void add(float[] x, int rows, ActiveInputs active, float[] out) {
        float[] sums = new float[outputs];
        float[][] ofInput = new float[4][outputs];
        float[] scales = new float[4];
        for (int r = 0; r < rows; r++) {
            active.clear();
            active.add(x, r * inputs, inputs);
            System.arraycopy(out, r * outputs, sums, 0, outputs);
            PlainProduct.addScaled(biases, 1, sums);
            int k = active.from(0);
            for (; k + 4 <= active.to(0); k += 4) {
                for (int n = 0; n < 4; n++) {
                    int i = active.indices[k + n];
                    System.arraycopy(weights, i * outputs, ofInput[n], 0, outputs);
                    scales[n] = x[r * inputs + i];
                }
                PlainProduct.addFourScaled(ofInput, scales, 0, sums);
            }
            for (; k < active.to(0); k++) {
                int i = active.indices[k];
                System.arraycopy(weights, i * outputs, ofInput[0], 0, outputs);
                PlainProduct.addScaled(ofInput[0], x[r * inputs + i], sums);
            }
            System.arraycopy(sums, 0, out, r * outputs, outputs);
        }
    }
}
