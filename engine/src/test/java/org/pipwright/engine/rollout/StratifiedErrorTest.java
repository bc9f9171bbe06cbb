package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.roll.Roll;

/** Errors against what means of made-up trials really do: these are sums of parts whose sizes are known. */
class StratifiedErrorTest {
    private static final int SERIES = 2;

    private final double[] first = new double[Roll.COUNT];
    private final double[] second = new double[Roll.COUNT];
    private final double[] together = new double[Strata.PAIRS];

    StratifiedErrorTest() {
        SplittableRandom random = new SplittableRandom(8);
        fill(first, random);
        fill(second, random);
        fill(together, random);
    }

    private static void fill(double[] parts, SplittableRandom random) {
        for (int i = 0; i < parts.length; i++) {
            parts[i] = random.nextDouble() - 0.5;
        }
    }

    /** Trials of two candidates, the second with less of everything and rest of its own. */
    private Moments trials(int count, long seed, double sides, double both, double rest) {
        Moments moments = new Moments(2, SERIES);
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < count; i++) {
            int pair = Strata.pair(seed, i);
            double rolls = sides * (first[pair / Roll.COUNT] + second[pair % Roll.COUNT]) + both * together[pair];
            double one = rolls + rest * (random.nextDouble() - 0.5);
            double other = rolls / 3 + rest * (random.nextDouble() - 0.5);
            moments.add(new double[] {one, 2 * one, other, 2 * other}, 0, SERIES, pair);
        }
        return moments;
    }

    private double exact(double sides, double both) {
        double mean = 0;
        for (Roll a : Roll.all()) {
            for (Roll b : Roll.all()) {
                double value = sides * (first[a.index()] + second[b.index()])
                        + both * together[a.index() * Roll.COUNT + b.index()];
                mean += a.probability() * b.probability() * value;
            }
        }
        return mean;
    }

    @ParameterizedTest
    @ValueSource(ints = {288, 540, 1260, 1296, 1332, 2592})
    void whatEachRollDoesByItselfPutsNoErrorOnAMean(int count) {
        Moments moments = trials(count, 3, 1, 0, 0);
        assertEquals(exact(1, 0), moments.mean(0, Moments.VALUE), 1e-12);
        assertEquals(0, moments.estimate(0, Moments.VALUE).standardError(), 1e-6);
        assertEquals(0, moments.difference(1, 0).standardError(), 1e-6);
    }

    @Test
    void whatTwoRollsDoTogetherPutsNoneOnWholeBlocks() {
        assertEquals(0, trials(1296, 3, 1, 1, 0).estimate(0, Moments.VALUE).standardError(), 1e-6);
        assertTrue(trials(1260, 3, 1, 1, 0).estimate(0, Moments.VALUE).standardError() > 1e-4);
        assertEquals(0, trials(2592, 3, 1, 1, 0).difference(0, 1).standardError(), 1e-6);
    }

    /** The mean of 600 squares of errors in units of them is 1, give or take 0.06. */
    @ParameterizedTest
    @CsvSource({
        "288, 1, 0.5, 0.5",
        "648, 2, 1, 0",
        "648, 1, 1, 0.3",
        "1260, 1, 2, 0.5",
        "1296, 1, 1, 0.5",
        "1944, 0.5, 3, 0.5",
        "1296, 0, 0, 1"
    })
    void errorsAreThoseOfMeans(int count, double sides, double both, double rest) {
        double exact = exact(sides, both);
        double squares = 0;
        double ofDifferences = 0;
        int runs = 600;
        for (int seed = 0; seed < runs; seed++) {
            Moments moments = trials(count, seed, sides, both, rest);
            Estimate value = moments.estimate(0, Moments.VALUE);
            squares += Math.pow((value.mean() - exact) / value.standardError(), 2) / runs;
            Estimate difference = moments.difference(1, 0);
            ofDifferences += Math.pow((difference.mean() + exact * 2 / 3) / difference.standardError(), 2) / runs;
        }
        assertTrue(squares > 0.8 && squares < 1.25, "values: " + squares);
        assertTrue(ofDifferences > 0.8 && ofDifferences < 1.25, "differences: " + ofDifferences);
    }

    /** A few rounds say little of strata. */
    @ParameterizedTest
    @ValueSource(ints = {36, 252})
    void theFirstRoundsCountTheirTrialsAsIndependent(int count) {
        Moments moments = trials(count, 1, 1, 0, 0);
        double squares = 0;
        for (int i = 0; i < count; i++) {
            int pair = Strata.pair(1, i);
            double off = first[pair / Roll.COUNT] + second[pair % Roll.COUNT] - moments.mean(0, Moments.VALUE);
            squares += off * off;
        }
        assertEquals(
                Math.sqrt(squares / (count - 1) / count),
                moments.estimate(0, Moments.VALUE).standardError(),
                1e-12);
    }

    @Test
    void strataAreRestored() {
        Strata strata = trials(288, 1, 1, 1, 1).strata().orElseThrow();
        double[] contents = strata.contents();
        assertEquals(Strata.size(2, SERIES), contents.length);
        Strata restored = Strata.restore(2, SERIES, 288, contents);
        assertArrayEquals(contents, restored.contents());
        assertEquals(strata.error(1, 0), restored.error(1, 0));
        assertEquals(strata.differenceError(1, 0), restored.differenceError(1, 0));
        assertThrows(IllegalArgumentException.class, () -> Strata.restore(2, SERIES, 324, contents));
    }
}
