package org.pipwright.engine.network;

/**
 * A layer prepared for products with many positions at once, most of whose inputs are zero, which then cost nothing. Positions
 * are rows, one after another. What a row becomes does not depend on the other rows, bit for bit.
 */
abstract class SparseProduct {
    final int inputs;
    final int outputs;

    /** The number of outputs is a multiple of {@link ResidualNetwork#WIDTH_STEP}. */
    SparseProduct(Layer layer) {
        inputs = layer.inputs();
        outputs = layer.outputs();
    }

    /**
     * {@code out[r][j] += biases[j] + sum over i of x[r][i] * weights[i][j]} for each row r.
     *
     * @param x none of which is below zero
     * @param room for so many rows
     */
    abstract void add(float[] x, int rows, ActiveInputs room, float[] out);
}
