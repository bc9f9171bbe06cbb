package org.pipwright.engine.network;

/** The kernel in plain Java: what the others are compared with. */
final class PlainKernel extends Kernel {
    @Override
    void accumulate(float[] base, float[] weights, int[] rows, float[] scales, int n, float floor, float[] out) {
        System.arraycopy(base, 0, out, 0, base.length);
        float[] row = new float[base.length];
        for (int r = 0; r < n; r++) {
            System.arraycopy(weights, rows[r] * row.length, row, 0, row.length);
            addScaled(row, scales[r], out);
        }
        clip(out, base.length, floor);
    }

    @Override
    void dense(float[] x, PackedLayer layer, float floor, float[] out) {
        System.arraycopy(layer.biases, 0, out, 0, layer.width);
        float[][] rows = new float[4][];
        float[] scales = new float[4];
        int found = 0;
        for (int i = 0; i < layer.inputs; i++) {
            // Of what comes out of max(0, x) most is zero, and adds nothing.
            if (x[i] != 0) {
                rows[found] = layer.rows[i];
                scales[found++] = x[i];
            }
            if (found == 4) {
                addFourScaled(rows, scales, out);
                found = 0;
            }
        }
        for (int k = 0; k < found; k++) {
            addScaled(rows[k], scales[k], out);
        }
        clip(out, layer.width, floor);
    }

    /** The same as adding four rows one after another, bit for bit, with a quarter of the loads and stores of sums. */
    private static void addFourScaled(float[][] rows, float[] scales, float[] out) {
        float[] row0 = rows[0];
        float[] row1 = rows[1];
        float[] row2 = rows[2];
        float[] row3 = rows[3];
        float scale0 = scales[0];
        float scale1 = scales[1];
        float scale2 = scales[2];
        float scale3 = scales[3];
        for (int j = 0; j < row0.length; j++) {
            out[j] = (((out[j] + scale0 * row0[j]) + scale1 * row1[j]) + scale2 * row2[j]) + scale3 * row3[j];
        }
    }

    /** Rounded twice on every processor, so that a recorded run or signature holds on all of them. */
    private static void addScaled(float[] row, float scale, float[] out) {
        for (int j = 0; j < row.length; j++) {
            out[j] += scale * row[j];
        }
    }

    /** None of the first numbers is less than {@code floor} any more. */
    static void clip(float[] out, int length, float floor) {
        for (int j = 0; j < length; j++) {
            out[j] = Math.max(floor, out[j]);
        }
    }
}
