package org.pipwright.engine.network;

/**
 * Which numbers of a row, or in any of some rows, are not zero: of what comes out of {@code max(0, x)} in a trained network
 * these are some ten to thirty in a hundred. Lists of them, one after another; one thread's buffer.
 */
final class ActiveInputs {
    /** Indices within a row, ascending, list after list. */
    final int[] indices;

    /** Where list k ends; the next one begins there. */
    private final int[] ends;

    private int lists;

    /** Room for the sum of some rows. */
    final float[] sums;

    /** Room for so many rows of so many numbers. */
    ActiveInputs(int rows, int inputs) {
        // One more than can be used: an index is written before it is known whether it counts.
        indices = new int[rows * inputs + 1];
        ends = new int[rows + 1];
        sums = new float[inputs];
    }

    /** Forgets all lists. */
    void clear() {
        lists = 0;
    }

    /** Adds the list of a row, none of whose numbers is below zero. */
    void add(float[] x, int from, int inputs) {
        int size = ends[lists];
        for (int i = 0; i < inputs; i++) {
            indices[size] = i;
            // 1 for all but +0: no branch, since none could be foreseen.
            size += -Float.floatToRawIntBits(x[from + i]) >>> 31;
        }
        ends[++lists] = size;
    }

    /** Index of the first of a list's. */
    int from(int list) {
        return ends[list];
    }

    /** Index after the last of a list's. */
    int to(int list) {
        return ends[list + 1];
    }
}
