package org.pipwright.training.learner;

import org.pipwright.engine.evaluation.Outcomes;

/** Softmax over the outcomes still possible, with cross-entropy against target chances. */
public final class MaskedSoftmax {
    private MaskedSoftmax() {}

    /**
     * Loss of one sample and its derivative by the scores, which is chance less target.
     *
     * @param scores six scores
     * @param possible one bit an outcome still possible
     * @param targets array that holds six target chances
     * @param at index of the first
     * @param delta receives the derivative; 0 where an outcome is impossible
     * @return cross-entropy in nats
     */
    public static double lossAndDelta(float[] scores, int possible, float[] targets, int at, float[] delta) {
        float largest = Float.NEGATIVE_INFINITY;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            if ((possible >> k & 1) != 0) {
                largest = Math.max(largest, scores[k]);
            }
        }
        double sum = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            double share = (possible >> k & 1) != 0 ? Math.exp(scores[k] - largest) : 0;
            delta[k] = (float) share;
            sum += share;
        }
        double logSum = Math.log(sum) + largest;
        double loss = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            boolean counts = (possible >> k & 1) != 0;
            float target = counts ? targets[at + k] : 0;
            loss += counts ? target * (logSum - scores[k]) : 0;
            delta[k] = (float) (delta[k] / sum) - target;
        }
        return loss;
    }
}
