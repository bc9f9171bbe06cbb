package org.pipwright.engine.network;

/**
 * A layer prepared for products with many positions at once. Positions are rows, one after another: of {@link #inputs}
 * numbers where they come in, of {@link #stride} where they go out. What a row becomes does not depend on the other rows,
 * bit for bit. Arrays have room for an even number of rows, since a kernel may take two at a time.
 */
abstract class Product {
    /** Outputs are padded with zeros to a multiple of this. */
    static final int STEP = ResidualNetwork.WIDTH_STEP;

    final int inputs;
    final int stride;

    Product(Layer layer) {
        inputs = layer.inputs();
        stride = (layer.outputs() + STEP - 1) / STEP * STEP;
    }

    /** {@code out[r][j] = max(floor, biases[j] + sum over i of x[r][i] * weights[i][j])} for each row r, in {@code room} where sums need some. */
    abstract void set(float[] x, int rows, float floor, ProductRoom room, float[] out);
}
