package org.pipwright.engine.network;

/**
 * Which numbers are not zero in any of some rows of what comes out of {@code max(0, x)}: of a trained network's hidden units
 * some ten to thirty in a hundred are not, and siblings share most of them, so sixteen have hardly more than four. Those with
 * even and with odd indices stand apart, as {@link Kernel#dense4} adds them up. One thread's buffer.
 */
final class ActiveOfGroup {
    /** Indices, ascending. */
    final int[] even;

    final int[] odd;

    /** How many of them there are. */
    int evens;

    int odds;

    /** Room for a kernel's sums of the even and of the odd ones, and what the latter begin with. */
    final float[] sums = new float[8 * Network.LANES];

    final float[] sums2 = new float[8 * Network.LANES];
    final float[] zeros = new float[2 * Network.LANES];

    private final float[] largest;

    /** Room for rows of so many numbers, a multiple of {@link Network#LANES}. */
    ActiveOfGroup(int inputs) {
        // One more than can be used: an index is written before it is known whether it counts.
        even = new int[inputs / 2 + 1];
        odd = new int[inputs / 2 + 1];
        largest = new float[inputs];
    }

    /** Finds them in the first numbers of the first rows, none of which is below zero. */
    void find(float[][] x, int rows, int inputs, Kernel kernel) {
        kernel.largest(x, rows, inputs, largest);
        int size = 0;
        int size2 = 0;
        for (int i = 0; i < inputs; i += 2) {
            even[size] = i;
            odd[size2] = i + 1;
            // 1 for all but +0: no branch, since none could be foreseen.
            size += -Float.floatToRawIntBits(largest[i]) >>> 31;
            size2 += -Float.floatToRawIntBits(largest[i + 1]) >>> 31;
        }
        evens = size;
        odds = size2;
    }
}
