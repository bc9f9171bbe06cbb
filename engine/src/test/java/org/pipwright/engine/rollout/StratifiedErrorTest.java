package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
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

    /** What is left is the doubt whether the next trial would say so too. */
    @ParameterizedTest
    @ValueSource(ints = {72, 288, 540, 1260, 1296, 1332, 2592})
    void whatEachRollDoesByItselfPutsNextToNoErrorOnAMean(int count) {
        Moments moments = trials(count, 3, 1, 0, 0);
        assertEquals(exact(1, 0), moments.mean(0, Moments.VALUE), 1e-12);
        double doubt = StratifiedError.ofSame(count - 41, 2);
        assertTrue(moments.estimate(0, Moments.VALUE).standardError() <= doubt);
        assertTrue(moments.estimate(0, Moments.VALUE).standardError() > doubt / 4);
        assertTrue(moments.difference(1, 0).standardError() <= doubt * 2 / 3);
    }

    @Test
    void whatTwoRollsDoTogetherPutsNextToNoneOnWholeBlocks() {
        double doubt = StratifiedError.ofSame(1296 - 441, 3);
        assertTrue(trials(1296, 3, 1, 1, 0).estimate(0, Moments.VALUE).standardError() < doubt);
        assertTrue(trials(648, 3, 1, 1, 0).estimate(0, Moments.VALUE).standardError() > 2 * doubt);
        assertTrue(trials(2592, 3, 1, 1, 0).difference(0, 1).standardError() < doubt);
    }

    /**
     * One trial in a hundred comes to something else, as it happens none of the first ones, or but one: the error covers that.
     * With two rolls of which the first decides most, the rest looked as if nothing were left to chance.
     */
    @ParameterizedTest
    @ValueSource(ints = {36, 72, 144, 288})
    void whatIsRareIsAllowedFor(int count) {
        double rare = 1.0 / count;
        double worst = 0;
        double squares = 0;
        int runs = 400;
        for (int seed = 0; seed < runs; seed++) {
            Moments moments = new Moments(1, SERIES);
            SplittableRandom random = new SplittableRandom(seed);
            for (int i = 0; i < count; i++) {
                int pair = Strata.pair(seed, i);
                double usual = pair / Roll.COUNT < 3 ? -1 : 1;
                double result = random.nextDouble() < rare ? -usual : usual;
                moments.add(new double[] {result, result}, 0, SERIES, pair);
            }
            double lost = Roll.all().stream()
                    .filter(roll -> roll.index() < 3)
                    .mapToDouble(Roll::probability)
                    .sum();
            Estimate said = moments.estimate(0, Moments.VALUE);
            double z = Math.abs(said.mean() - (1 - 2 * lost) * (1 - 2 * rare)) / said.standardError();
            worst = Math.max(worst, z);
            squares += z * z / runs;
        }
        assertTrue(worst < 6 && squares < 1.5, "at worst " + worst + ", squares " + squares);
    }

    /** All the same by chance, or since nothing else can come. */
    @Test
    void theSameEveryTimeIsSureOnlyWhereNothingElseCanCome() {
        Moments moments = new Moments(1, SERIES);
        for (int i = 0; i < 36; i++) {
            moments.add(new double[] {1, 1}, 0, SERIES, Strata.pair(1, i));
        }
        assertEquals(0, moments.estimate(0, Moments.VALUE).standardError());
        moments.unsure(new DoubleUnaryOperator[] {value -> -value});
        // One more trial that lies off by 2 times the root of a half.
        assertEquals(
                Math.sqrt(2 / 37.0 / 36), moments.estimate(0, Moments.VALUE).standardError(), 1e-12);
        moments.unsure(new DoubleUnaryOperator[] {null});
        assertEquals(0, moments.estimate(0, Moments.VALUE).standardError());
    }

    /**
     * The mean of 600 squares of errors in units of them is 1, give or take 0.06; less where the rolls explain so much that
     * what might still come counts.
     */
    @ParameterizedTest
    @CsvSource({
        "72, 0, 0, 1, 0.8",
        "72, 1, 0.5, 0.5, 0.5",
        "144, 1, 0.5, 0.5, 0.75",
        "288, 1, 0.5, 0.5, 0.8",
        "648, 2, 1, 0, 0.6",
        "648, 1, 1, 0.3, 0.75",
        "1260, 1, 2, 0.5, 0.8",
        "1296, 1, 1, 0.5, 0.8",
        "1944, 0.5, 3, 0.5, 0.75",
        "1296, 0, 0, 1, 0.8"
    })
    void errorsAreThoseOfMeans(int count, double sides, double both, double rest, double least) {
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
        assertTrue(squares > least && squares < 1.25, "values: " + squares);
        assertTrue(ofDifferences > least && ofDifferences < 1.25, "differences: " + ofDifferences);
    }

    /** A round alone has not enough trials for each roll; rolls of as many pips together leave errors rather too large. */
    @Test
    void errorsOfOneRoundAreNotTooSmall() {
        double squares = 0;
        double exact = exact(1, 0.5);
        int runs = 600;
        for (int seed = 0; seed < runs; seed++) {
            Estimate value = trials(36, seed, 1, 0.5, 0.5).estimate(0, Moments.VALUE);
            squares += Math.pow((value.mean() - exact) / value.standardError(), 2) / runs;
        }
        assertTrue(squares > 0.1 && squares < 1.2, "squares: " + squares);
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
