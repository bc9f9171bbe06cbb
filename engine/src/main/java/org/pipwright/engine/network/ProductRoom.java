package org.pipwright.engine.network;

/** One thread's arrays for the sums of a plain product: kept from call to call, they stay in a core's own cache. */
final class ProductRoom {
    private float[][] arrays = {};

    /** At least so many arrays of a length, which hold whatever was left in them. */
    float[][] arrays(int count, int length) {
        if (arrays.length < count || arrays[0].length != length) {
            arrays = new float[count][length];
        }
        return arrays;
    }
}
