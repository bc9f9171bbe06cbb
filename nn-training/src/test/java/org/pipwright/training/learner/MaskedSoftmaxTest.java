package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;

/** Loss against its definition, derivative against differences of the loss, all in double precision. */
class MaskedSoftmaxTest {
    private static final int COUNT = Outcomes.COUNT;

    /** Minus the sum of target times logarithm of chance, over what is possible. */
    private static double naiveLoss(double[] scores, int possible, float[] targets, int at) {
        double sum = 0;
        for (int k = 0; k < COUNT; k++) {
            sum += (possible >> k & 1) != 0 ? Math.exp(scores[k]) : 0;
        }
        double loss = 0;
        for (int k = 0; k < COUNT; k++) {
            loss -= (possible >> k & 1) != 0 ? targets[at + k] * Math.log(Math.exp(scores[k]) / sum) : 0;
        }
        return loss;
    }

    private static float[] targets(SplittableRandom random, int possible, int at) {
        float[] targets = new float[at + COUNT];
        double sum = 0;
        double[] shares = new double[COUNT];
        for (int k = 0; k < COUNT; k++) {
            shares[k] = (possible >> k & 1) != 0 ? random.nextDouble() : 0;
            sum += shares[k];
        }
        for (int k = 0; k < COUNT; k++) {
            targets[at + k] = (float) (shares[k] / sum);
        }
        return targets;
    }

    @Test
    void lossAndItsDifferences() {
        SplittableRandom random = new SplittableRandom(2);
        double step = 1e-4;
        for (int possible = 1; possible < 1 << COUNT; possible++) {
            for (int at = 0; at <= COUNT; at += COUNT) {
                double[] exact = new double[COUNT];
                float[] scores = new float[COUNT];
                for (int k = 0; k < COUNT; k++) {
                    scores[k] = (float) (12 * random.nextDouble() - 6);
                    exact[k] = scores[k];
                }
                float[] targets = targets(random, possible, at);
                float[] delta = new float[COUNT];
                double loss = MaskedSoftmax.lossAndDelta(scores, possible, targets, at, delta);
                assertEquals(naiveLoss(exact, possible, targets, at), loss, 1e-6);
                for (int k = 0; k < COUNT; k++) {
                    exact[k] += step;
                    double above = naiveLoss(exact, possible, targets, at);
                    exact[k] -= 2 * step;
                    double below = naiveLoss(exact, possible, targets, at);
                    exact[k] += step;
                    assertEquals((above - below) / (2 * step), delta[k], 2e-6);
                }
            }
        }
    }

    @Test
    void impossibleOutcomesHaveNoPull() {
        float[] delta = new float[COUNT];
        float[] scores = {0, 1, 500, -3, Float.POSITIVE_INFINITY, Float.NaN};
        float[] targets = {1, 0, 0.3f, 0, 0.2f, 0};
        double loss = MaskedSoftmax.lossAndDelta(scores, 0b001011, targets, 0, delta);
        double sum = 1 + Math.exp(1) + Math.exp(-3);
        assertEquals(Math.log(sum), loss, 1e-6);
        assertEquals(0, delta[2]);
        assertEquals(0, delta[4]);
        assertEquals(0, delta[5]);
        assertEquals(1 / sum - 1, delta[0], 1e-6);
    }

    /** Scores far apart neither overflow nor lose the loss. */
    @Test
    void largeScores() {
        float[] delta = new float[COUNT];
        float[] scores = {1000, -1000, 0, 0, 0, 0};
        double loss = MaskedSoftmax.lossAndDelta(scores, 0b000011, new float[] {0, 1, 0, 0, 0, 0}, 0, delta);
        assertEquals(2000, loss, 1e-6);
        assertEquals(1, delta[0]);
        assertEquals(-1, delta[1]);
    }
}
