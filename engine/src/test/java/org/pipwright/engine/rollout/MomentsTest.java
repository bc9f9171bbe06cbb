package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MomentsTest {
    private static final int TRIALS = 500;
    private static final int SERIES = 4;

    private final double[][][] values = new double[TRIALS][3][SERIES];
    private final Moments moments = independent(3, SERIES);

    MomentsTest() {
        SplittableRandom random = new SplittableRandom(5);
        for (double[][] trial : values) {
            double shared = random.nextDouble();
            double[] flat = new double[3 * SERIES];
            for (int c = 0; c < 3; c++) {
                for (int k = 0; k < SERIES; k++) {
                    trial[c][k] = random.nextDouble() - 0.3 + shared;
                    flat[c * SERIES + k] = trial[c][k];
                }
            }
            moments.add(flat, 0, SERIES, 0);
        }
    }

    /** Of trials whose rolls are not known. */
    static Moments independent(int candidates, int series) {
        return Moments.restore(candidates, series, 0, new double[Moments.size(candidates, series)], null);
    }

    private double[] series(int candidate, int series) {
        double[] all = new double[TRIALS];
        for (int t = 0; t < TRIALS; t++) {
            all[t] = values[t][candidate][series];
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
            for (int k = 0; k < SERIES; k++) {
                assertTwoPass(series(c, k), moments.estimate(c, k));
            }
        }
    }

    @Test
    void differencesAreThoseOfTheDifferencesTrialByTrial() {
        for (int a = 0; a < 3; a++) {
            for (int b = 0; b < 3; b++) {
                double[] difference = series(a, Moments.VALUE);
                double[] other = series(b, Moments.VALUE);
                for (int t = 0; t < TRIALS; t++) {
                    difference[t] -= other[t];
                }
                assertTwoPass(difference, moments.difference(a, b));
            }
        }
    }

    /** Sums of squares would leave rounding errors that look like a spread. */
    @Test
    void numbersThatNeverChangeHaveNoSpread() {
        Moments constant = independent(2, 2);
        for (int t = 0; t < TRIALS; t++) {
            constant.add(new double[] {0.1, 0.7, -1.0 / 3, 0.2}, 0, 2, 0);
        }
        assertEquals(new Estimate(0.1, 0), constant.estimate(0, Moments.VALUE));
        assertEquals(0, constant.difference(0, 1).standardError());
        assertEquals(Double.NaN, constant.reduction(0));
    }

    @Test
    void contentsAreRestored() {
        double[] contents = moments.contents();
        assertEquals(Moments.size(3, SERIES), contents.length);
        Moments restored = Moments.restore(3, SERIES, TRIALS, contents, null);
        assertArrayEquals(contents, restored.contents());
        assertEquals(moments.estimate(2, 3), restored.estimate(2, 3));
        assertEquals(moments.difference(0, 2), restored.difference(0, 2));
    }
}
