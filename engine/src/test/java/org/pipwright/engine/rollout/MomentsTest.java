package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MomentsTest {
    private static final int TRIALS = 500;

    private final double[][][] values = new double[TRIALS][3][12];
    private final Moments moments = new Moments(3);

    MomentsTest() {
        SplittableRandom random = new SplittableRandom(5);
        for (double[][] trial : values) {
            double shared = random.nextDouble();
            double[] flat = new double[36];
            for (int c = 0; c < 3; c++) {
                for (int k = 0; k < 12; k++) {
                    trial[c][k] = random.nextDouble() - 0.3 + shared;
                    flat[c * 12 + k] = trial[c][k];
                }
            }
            moments.add(flat, 0, 12);
        }
    }

    private static double equity(double[] numbers, int at) {
        double[] points = {1, 2, 3, -1, -2, -3};
        double sum = 0;
        for (int k = 0; k < 6; k++) {
            sum += points[k] * numbers[at + k];
        }
        return sum;
    }

    private double[] series(int candidate, int series) {
        double[] all = new double[TRIALS];
        for (int t = 0; t < TRIALS; t++) {
            double[] numbers = values[t][candidate];
            all[t] = series < 6 ? numbers[6 + series] : equity(numbers, series == Moments.PLAIN ? 0 : 6);
        }
        return all;
    }

    /** Two passes: the mean, then the squares of what is left. */
    private static void assertTwoPass(double[] all, Estimate found) {
        double mean = 0;
        for (double x : all) {
            mean += x / all.length;
        }
        double squares = 0;
        for (double x : all) {
            squares += (x - mean) * (x - mean);
        }
        assertEquals(mean, found.mean(), 1e-12);
        assertEquals(Math.sqrt(squares / (all.length - 1) / all.length), found.standardError(), 1e-12);
    }

    @Test
    void meansAndErrorsAreThoseOfTwoPasses() {
        for (int c = 0; c < 3; c++) {
            for (int k = 0; k < Moments.SERIES; k++) {
                assertTwoPass(series(c, k), moments.estimate(c, k));
            }
        }
    }

    @Test
    void differencesAreThoseOfTheDifferencesTrialByTrial() {
        for (int a = 0; a < 3; a++) {
            for (int b = 0; b < 3; b++) {
                double[] difference = series(a, Moments.EQUITY);
                double[] other = series(b, Moments.EQUITY);
                for (int t = 0; t < TRIALS; t++) {
                    difference[t] -= other[t];
                }
                assertTwoPass(difference, moments.difference(a, b));
            }
        }
    }
}
