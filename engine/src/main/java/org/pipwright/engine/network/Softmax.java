package org.pipwright.engine.network;

import org.pipwright.engine.evaluation.Outcomes;

/** Softmax over the outcomes that are possible. */
final class Softmax {
    private static final float LOG2_E = 1.442695041f;

    private static final float LN2_HIGH = 0.693359375f;

    private static final float LN2_LOW = -2.1219444e-4f;

    /** Numbers of this size have no bits behind the point: what is added to one is rounded, and stands in its lowest bits. */
    private static final float ROUNDER = 12_582_912f;

    /** Below this the chance is less than 1e-34 of the largest and rounds to nothing. */
    private static final float MIN = -80f;

    private Softmax() {}

    /**
     * Turns scores into chances.
     *
     * @param scores six scores
     * @param possible one bit an outcome; outcomes without a bit get chance 0
     * @param out where to write
     * @param outAt index of the first of six chances
     */
    static void apply(float[] scores, int possible, float[] out, int outAt) {
        float largest = Float.NEGATIVE_INFINITY;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            largest = (possible >> k & 1) != 0 ? Math.max(largest, scores[k]) : largest;
        }
        float sum = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            float share = (possible >> k & 1) != 0 ? exp(scores[k] - largest) : 0;
            out[outAt + k] = share;
            sum += share;
        }
        float scale = 1 / sum;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] *= scale;
        }
    }

    /**
     * e to the x for x at most 0, within 3e-7 of its value: x = n ln 2 + r with r at most half of ln 2 in size, the power
     * of two by the exponent bits, e to the r by its Taylor sum to the sixth power (the usual range reduction; Cody and
     * Waite, Software Manual for the Elementary Functions, 1980, chapter 6, from memory). As there, ln 2 comes in two
     * parts, of which the first has so few digits that its product with n is exact.
     */
    static float exp(float x) {
        float scaled = Math.max(x, MIN) * LOG2_E;
        float rounded = scaled + ROUNDER;
        float n = rounded - ROUNDER;
        float r = Math.max(x, MIN) - n * LN2_HIGH - n * LN2_LOW;
        float sum = 1 + r * (1 + r * (1 / 2f + r * (1 / 6f + r * (1 / 24f + r * (1 / 120f + r * (1 / 720f))))));
        return Float.intBitsToFloat(Float.floatToRawIntBits(rounded) + 127 << 23) * sum;
    }
}
