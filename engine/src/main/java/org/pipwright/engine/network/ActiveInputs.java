package org.pipwright.engine.network;

/**
 * Which numbers of each row are not zero: of what comes out of {@code max(0, x)} in a trained network these are some ten to
 * thirty in a hundred. One thread's buffer.
 */
final class ActiveInputs {
    /** Indices within their row, ascending, row after row. */
    final int[] indices;

    /** Where those of row r end; those of the next begin there. */
    private final int[] ends;

    /** Room for so many rows of so many numbers. */
    ActiveInputs(int rows, int inputs) {
        // One more than can be used: an index is written before it is known whether it counts.
        indices = new int[rows * inputs + 1];
        ends = new int[rows + 1];
    }

    /** Finds those of some rows, one after another, none of whose numbers is below zero. */
    void find(float[] x, int rows, int inputs) {
        int size = 0;
        for (int r = 0; r < rows; r++) {
            int from = r * inputs;
            for (int i = 0; i < inputs; i++) {
                indices[size] = i;
                // 1 for all but +0: no branch, since none could be foreseen.
                size += -Float.floatToRawIntBits(x[from + i]) >>> 31;
            }
            ends[r + 1] = size;
        }
    }

    /** Index of the first of a row's. */
    int from(int row) {
        return ends[row];
    }

    /** Index after the last of a row's. */
    int to(int row) {
        return ends[row + 1];
    }
}
