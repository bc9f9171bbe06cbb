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
        for (int i = 0; i < layer.inputs; i++) {
            addScaled(layer.rows[i], x[i], out);
        }
        clip(out, layer.width, floor);
    }

    /** Rounded twice on every processor, so that a recorded run or signature holds on all of them. */
    private static void addScaled(float[] row, float scale, float[] out) {
        for (int j = 0; j < row.length; j++) {
            out[j] += scale * row[j];
        }
    }

    private static void clip(float[] out, int length, float floor) {
        for (int j = 0; j < length; j++) {
            out[j] = Math.max(floor, out[j]);
        }
    }
}
