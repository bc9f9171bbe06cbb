package org.pipwright.training.learner;

/**
 * The Adam rule (Kingma and Ba, ICLR 2015, the form at the end of section 2 with the bias corrections folded into the
 * rate), with the usual constants.
 */
public final class Adam {
    /** Share of the running mean of gradients that a step keeps. */
    public static final float BETA1 = 0.9f;
    /** Share of the running mean of their squares that a step keeps. */
    public static final float BETA2 = 0.999f;
    /** Added to the root of that mean. */
    public static final float EPSILON = 1e-8f;

    /**
     * Smaller gradients count as 0, and so do running means below the next. Steps do not change noticeably: both are far
     * below {@link #EPSILON} once its square root is taken. But the means of a weight whose gradient has become 0 would
     * fall to the smallest floats there are and stay there, since 0.9 times the smallest is rounded up to it again; and
     * processors are slow with numbers that are not normalised.
     */
    static final float MIN_GRADIENT = 1e-15f;

    static final float MIN_MEAN = 1e-30f;

    private Adam() {}

    /** The rate of one step with both bias corrections; {@code step} counts from 1. */
    static float corrected(double rate, long step) {
        return (float) (rate * Math.sqrt(1 - Math.pow(BETA2, step)) / (1 - Math.pow(BETA1, step)));
    }

    /**
     * Updates parameters from (inclusive) to (exclusive), and the running means of gradient and squared gradient.
     *
     * @param gradient mean gradient over the batch
     * @param rate as {@link #corrected} gives it
     */
    static void update(
            float[] parameters, float[] mean, float[] square, float[] gradient, int from, int to, float rate) {
        for (int i = from; i < to; i++) {
            float g = Math.abs(gradient[i]) < MIN_GRADIENT ? 0 : gradient[i];
            float m = BETA1 * mean[i] + (1 - BETA1) * g;
            float s = BETA2 * square[i] + (1 - BETA2) * (g * g);
            mean[i] = Math.abs(m) < MIN_MEAN ? 0 : m;
            square[i] = s < MIN_MEAN ? 0 : s;
        }
        for (int i = from; i < to; i++) {
            parameters[i] -= rate * mean[i] / ((float) Math.sqrt(square[i]) + EPSILON);
        }
    }
}
