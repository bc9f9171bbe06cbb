package org.pipwright.training.cuda;

/**
 * A network as it learns, laid out as its {@link ResidualShape} says.
 *
 * @param weights master weights
 * @param firstMoments mean of gradients
 * @param secondMoments mean of their squares
 * @param average running average of the weights
 * @param steps steps of learning so far
 */
record NetState(float[] weights, float[] firstMoments, float[] secondMoments, float[] average, long steps) {
    /** A network that has not learned yet. */
    static NetState fresh(float[] weights) {
        return new NetState(weights, new float[weights.length], new float[weights.length], weights, 0);
    }

    /** Whether the average can be judged by: training may have diverged. */
    boolean isFinite() {
        for (float weight : average) {
            if (!Float.isFinite(weight)) {
                return false;
            }
        }
        return true;
    }
}
