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
    void add(float[] x, ActiveInputs active, int rows, float[] out) {
        float[] sums = new float[outputs];
        float[] ofInput = new float[outputs];
        for (int r = 0; r < rows; r++) {
            System.arraycopy(out, r * outputs, sums, 0, outputs);
            PlainProduct.addScaled(biases, 1, sums);
            for (int k = active.from(r); k < active.to(r); k++) {
                int i = active.indices[k];
                System.arraycopy(weights, i * outputs, ofInput, 0, outputs);
                PlainProduct.addScaled(ofInput, x[r * inputs + i], sums);
            }
            System.arraycopy(sums, 0, out, r * outputs, outputs);
        }
    }
}
