package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.rules.PossibleOutcomes;

/** The exponential against the library's, and chances against the definition of softmax. */
class SoftmaxTest {
    @Test
    void expOverItsRange() {
        double worst = 0;
        for (int i = 0; i <= 4_000_000; i++) {
            float x = -80f * i / 4_000_000;
            double expected = Math.exp(x);
            worst = Math.max(worst, Math.abs(Softmax.exp(x) - expected) / expected);
        }
        assertTrue(worst < 3e-7, "relative error " + worst);
        assertEquals(1f, Softmax.exp(0));
        assertEquals(1f, Softmax.exp(-0f));
    }

    @ParameterizedTest
    @ValueSource(floats = {-80.5f, -1000f, -Float.MAX_VALUE, Float.NEGATIVE_INFINITY})
    void expBelowItsRangeIsNothing(float x) {
        assertTrue(Softmax.exp(x) >= 0 && Softmax.exp(x) < 2e-35);
    }

    private static double[] naive(float[] scores, int possible) {
        double[] chances = new double[Outcomes.COUNT];
        double largest = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            largest = (possible & 1 << k) != 0 ? Math.max(largest, scores[k]) : largest;
        }
        double sum = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[k] = (possible & 1 << k) != 0 ? Math.exp(scores[k] - largest) : 0;
            sum += chances[k];
        }
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[k] /= sum;
        }
        return chances;
    }

    /** Every mask, scores from close together to far apart. */
    @ParameterizedTest
    @ValueSource(floats = {0f, 0.001f, 1f, 10f, 100f, 1e4f, 1e30f})
    void chancesAgree(float spread) {
        SplittableRandom random = new SplittableRandom(3);
        for (int possible = 1; possible <= PossibleOutcomes.ALL; possible++) {
            for (int trial = 0; trial < 100; trial++) {
                // More scores than six, as the padded last layer has.
                float[] scores = RandomNetworks.floats(random, 16, spread);
                float[] out = new float[Outcomes.COUNT + 4];
                Arrays.fill(out, Float.NaN);
                Softmax.apply(scores, possible, out, 2);
                double[] expected = naive(scores, possible);
                double sum = 0;
                for (int k = 0; k < Outcomes.COUNT; k++) {
                    assertEquals(expected[k], out[2 + k], 1e-6);
                    assertTrue((possible & 1 << k) != 0 || out[2 + k] == 0, "an impossible outcome has no chance");
                    sum += out[2 + k];
                }
                assertEquals(1, sum, 4e-7);
                for (int k : new int[] {0, 1, 8, 9}) {
                    assertEquals(Float.NaN, out[k], "written beyond the six");
                }
            }
        }
    }

    @Test
    void theHighestScoreMayBelongToAnImpossibleOutcome() {
        float[] scores = {1, 1000, 1000, 1, 1000, 1000};
        float[] out = new float[Outcomes.COUNT];
        Softmax.apply(scores, 0b001001, out, 0);
        assertEquals(0.5f, out[0], 1e-7);
        assertEquals(0.5f, out[3], 1e-7);
    }
}
