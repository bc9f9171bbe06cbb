package org.pipwright.engine.network;

import java.util.Arrays;

/**
 * Products in plain Java: what the others are compared with. They use the layer's weights where they lie, since a copy of a
 * large layer would take longer than a single product with it, in a JVM that has just started.
 */
final class PlainProduct extends Product {
    /**
     * So much longer than a multiple of 16 are the arrays that a product works with: with the 16 bytes of its header each then
     * takes whole cache lines, and those that are made one after another lie alike in them, which C2 can make all accesses
     * aligned of. A fifth is gained; where headers have another length, nothing is lost.
     */
    private static final int SPARE = 12;

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
    void set(float[] x, int rows, float floor, ProductRoom room, float[] out) {
        float[][] arrays = room.arrays(4 + rows, stride + SPARE);
        float[][] ofInput = Arrays.copyOf(arrays, 4);
        float[][] sums = Arrays.copyOfRange(arrays, 4, 4 + rows);
        for (float[] row : ofInput) {
            Arrays.fill(row, outputs, row.length, 0);
        }
        for (float[] sum : sums) {
            System.arraycopy(biases, 0, sum, 0, stride);
        }
        int i = 0;
        for (; i + 4 <= inputs; i += 4) {
            for (int k = 0; k < 4; k++) {
                System.arraycopy(weights, (i + k) * outputs, ofInput[k], 0, outputs);
            }
            for (int r = 0; r < rows; r++) {
                addFourScaled(ofInput, x, r * inputs + i, sums[r]);
            }
        }
        for (; i < inputs; i++) {
            System.arraycopy(weights, i * outputs, ofInput[0], 0, outputs);
            for (int r = 0; r < rows; r++) {
                addScaled(ofInput[0], x[r * inputs + i], sums[r]);
            }
        }
        for (int r = 0; r < rows; r++) {
            PlainKernel.clip(sums[r], stride, floor);
            System.arraycopy(sums[r], 0, out, r * stride, stride);
        }
    }

    /** The same as adding four rows one after another, bit for bit, with a quarter of the loads and stores of sums. */
    static void addFourScaled(float[][] rows, float[] scales, int at, float[] out) {
        float[] row0 = rows[0];
        float[] row1 = rows[1];
        float[] row2 = rows[2];
        float[] row3 = rows[3];
        float scale0 = scales[at];
        float scale1 = scales[at + 1];
        float scale2 = scales[at + 2];
        float scale3 = scales[at + 3];
        for (int j = 0; j < out.length; j++) {
            float two = MultiplyAdd.of(scale1, row1[j], MultiplyAdd.of(scale0, row0[j], out[j]));
            out[j] = MultiplyAdd.of(scale3, row3[j], MultiplyAdd.of(scale2, row2[j], two));
        }
    }

    /** Adds {@code scale} times a row to as many sums: whole arrays, whose loops C2 vectorises by itself. */
    static void addScaled(float[] row, float scale, float[] out) {
        for (int j = 0; j < row.length; j++) {
            out[j] = MultiplyAdd.of(scale, row[j], out[j]);
        }
    }
}
