package org.pipwright.bench.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SignedFitTest {
    private static SignedFit fit(double... weights) {
        SignedFit fit = new SignedFit(weights.length);
        SplittableRandom random = new SplittableRandom(5);
        for (int n = 0; n < 5000; n++) {
            double[] row = new double[weights.length];
            double target = 0.01 * (random.nextDouble() - 0.5);
            for (int i = 0; i < row.length; i++) {
                row[i] = random.nextInt(-3, 4);
                target += weights[i] * row[i];
            }
            fit.add(row, target);
        }
        return fit;
    }

    /** What rows were made with is found again; the ridge takes a hundredth. */
    @Test
    void weightsAreFoundAgain() {
        SignedFit fit = fit(0.5, 0, 2);
        double[] found = fit.weights();
        assertEquals(0.5, found[0], 0.02);
        assertEquals(0, found[1], 0.02);
        assertEquals(2, found[2], 0.05);
        assertEquals(1, fit.explained(found), 0.001);
        assertEquals(5000, fit.rows());
    }

    /** A weight that would be below 0 is 0, and the others are then the best without it. */
    @Test
    void noWeightIsBelowZero() {
        SignedFit fit = fit(0.5, -1);
        double[] found = fit.weights();
        assertEquals(0, found[1]);
        assertEquals(0.5, found[0], 0.05);
        assertTrue(fit.explained(found) < 0.3);
    }
}
