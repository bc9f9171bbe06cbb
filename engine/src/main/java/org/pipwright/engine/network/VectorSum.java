package org.pipwright.engine.network;

import jdk.incubator.vector.FloatVector;

/** Sums of the lanes of a vector in an order of our own: that of the vector's own reduction may change from call to call. */
final class VectorSum {
    private VectorSum() {}

    /** The sum; {@code l} has room for {@link Network#LANES} numbers, and those past the vector's length are 0. */
    static float of(FloatVector vector, float[] l) {
        vector.intoArray(l, 0);
        float a = l[0] + l[8] + (l[4] + l[12]) + (l[2] + l[10] + (l[6] + l[14]));
        float b = l[1] + l[9] + (l[5] + l[13]) + (l[3] + l[11] + (l[7] + l[15]));
        return a + b;
    }
}
