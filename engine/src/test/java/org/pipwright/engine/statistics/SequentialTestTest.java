package org.pipwright.engine.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.statistics.SequentialTest.Verdict;

/** The sequential test: its numbers, and its error rates by simulation. */
class SequentialTestTest {
    private static final int RUNS = 2000;

    /** Pairs between looks, as duels have them. */
    private static final int BLOCK = 16;

    /** Of {@link #pair}: the sum of chance times square over 0.5, 1, 1.5, 2 and 3. */
    private static final double VARIANCE = 0.24 * 0.25 + 0.12 * 1 + 0.12 * 2.25 + 0.09 * 4 + 0.03 * 9;

    private static final SequentialTest USUAL = SequentialTest.usual();

    /** Wald 1945: limits ln(0.05/0.95) and ln(0.95/0.05). */
    @Test
    void limitsAreWalds() {
        assertEquals(-Math.log(19), USUAL.lowerLimit(), 1e-12);
        assertEquals(Math.log(19), USUAL.upperLimit(), 1e-12);
        SequentialTest uneven = new SequentialTest(0, 0.02, 0.01, 0.2);
        assertEquals(Math.log(0.2 / 0.99), uneven.lowerLimit(), 1e-12);
        assertEquals(Math.log(80), uneven.upperLimit(), 1e-12);
    }

    /** The ratio equals the sum of logarithms of normal densities with the sample's variance. */
    @Test
    void ratioIsThatOfNormalDensities() {
        SplittableRandom random = new SplittableRandom(5);
        double[] values = random.doubles(700, -3, 3).toArray();
        RunningMean moments = RunningMean.NONE;
        for (double value : values) {
            moments = moments.plus(value);
        }
        double expected = 0;
        for (double value : values) {
            expected += logDensity(value, 0.02, moments.variance()) - logDensity(value, 0, moments.variance());
        }
        assertEquals(expected, USUAL.ratio(moments), 1e-9);
    }

    private static double logDensity(double value, double mean, double variance) {
        return -(value - mean) * (value - mean) / (2 * variance) - Math.log(2 * Math.PI * variance) / 2;
    }

    /**
     * Pairs as real ones: the half-point values of two games, most of them 0, with about the variance that even
     * nets have; the mean is moved by turning some of the -0.5 into +0.5.
     */
    private static Verdict simulate(double mean, SplittableRandom random, long[] pairs) {
        RunningMean moments = RunningMean.NONE;
        while (USUAL.verdict(moments) == Verdict.UNDECIDED) {
            for (int i = 0; i < BLOCK; i++) {
                moments = moments.plus(pair(mean, random));
            }
        }
        pairs[0] += moments.count();
        return USUAL.verdict(moments);
    }

    private static double pair(double mean, SplittableRandom random) {
        double at = random.nextDouble();
        if (at < 0.40) {
            return 0;
        }
        if (at < 0.64) {
            return at < 0.52 + mean ? 0.5 : -0.5;
        }
        double size = at < 0.76 ? 1 : at < 0.88 ? 1.5 : at < 0.97 ? 2 : 3;
        return random.nextBoolean() ? size : -size;
    }

    /** Each error rate is at most the 0.05 asked for, give or take the simulation's own error, and not far below it. */
    @ParameterizedTest
    @CsvSource({"0, HIGH", "0.02, LOW"})
    void errorRatesAreAsAskedFor(double mean, Verdict wrong) {
        SplittableRandom random = new SplittableRandom(6);
        long[] pairs = new long[1];
        int errors = 0;
        for (int run = 0; run < RUNS; run++) {
            errors += simulate(mean, random, pairs) == wrong ? 1 : 0;
        }
        double rate = errors / (double) RUNS;
        double tolerance = 3 * Math.sqrt(0.05 * 0.95 / RUNS);
        assertTrue(rate <= 0.05 + tolerance && rate >= 0.02, "rate of errors: " + rate);

        // Wald's mean sample number for equal error rates: (1 - 2 alpha) ln((1 - alpha) / alpha) over the mean step.
        double step = 0.02 * 0.02 / (2 * VARIANCE);
        double expected = 0.9 * Math.log(19) / step;
        assertEquals(expected, pairs[0] / (double) RUNS, 0.06 * expected);
    }

    /** Half way between the hypotheses either verdict is as likely. */
    @Test
    void halfWayIsEven() {
        SplittableRandom random = new SplittableRandom(7);
        int high = 0;
        for (int run = 0; run < RUNS; run++) {
            high += simulate(0.01, random, new long[1]) == Verdict.HIGH ? 1 : 0;
        }
        assertEquals(0.5, high / (double) RUNS, 4 * Math.sqrt(0.25 / RUNS));
    }

    @Test
    void identicalPlayersAreNoBetter() {
        RunningMean nothing = new RunningMean(SequentialTest.MIN_PAIRS, 0, 0);
        assertEquals(Verdict.LOW, USUAL.verdict(nothing));
        assertEquals(Verdict.UNDECIDED, USUAL.verdict(new RunningMean(SequentialTest.MIN_PAIRS - 1, 0, 0)));
    }

    @ParameterizedTest
    @CsvSource({
        "0.02, 0, 0.05, 0.05",
        "0, 0, 0.05, 0.05",
        "-4, 0, 0.05, 0.05",
        "0, NaN, 0.05, 0.05",
        "0, 0.1, 0, 0.05",
        "0, 0.1, 0.05, 0.5",
        "0, 0.1, NaN, 0.5"
    })
    void nonsenseIsRefused(double low, double high, double alpha, double beta) {
        assertThrows(IllegalArgumentException.class, () -> new SequentialTest(low, high, alpha, beta));
    }
}
