package org.pipwright.engine.rollout;

import java.util.Arrays;
import java.util.function.Supplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.pipwright.engine.roll.Roll;

/**
 * Trials sorted by the pair of rolls that {@link TrialDice} spreads evenly, so that the errors of their means are those of
 * spread throws. Kept are the means of each pair of rolls, and how far trials with the same pair are from them, by the number
 * of doubles in it. Means of differences of candidates are differences of means.
 */
final class Strata {
    /** Kinds of pairs: with none, one or two doubles. */
    static final int KINDS = 3;

    static final int PAIRS = Roll.COUNT * Roll.COUNT;

    private static final int[] KIND = IntStream.range(0, PAIRS)
            .map(pair -> doubles(pair / Roll.COUNT) + doubles(pair % Roll.COUNT))
            .toArray();

    private final int series;
    private final int[] counts = new int[PAIRS];

    /** By candidate, number and pair. */
    private final double[][][] means;

    /** By candidate, number and kind, sums of squares. */
    private final double[][][] within;

    /** By candidate, earlier candidate and kind, the same of the differences of their values. */
    private final double[][][] apart;

    /** Of no trials; {@code series} are the numbers each has for a candidate. */
    Strata(int candidates, int series) {
        this.series = series;
        means = new double[candidates][series][PAIRS];
        within = new double[candidates][series][KINDS];
        apart = new double[candidates][][];
        for (int c = 0; c < candidates; c++) {
            apart[c] = new double[c][KINDS];
        }
    }

    private static int doubles(int roll) {
        return Roll.all().get(roll).isDouble() ? 1 : 0;
    }

    /**
     * The pair of rolls that a trial begins with.
     *
     * @param seed of all trials
     * @param trial its number, from 0
     * @return from 0, less than {@link #PAIRS}
     */
    static int pair(long seed, long trial) {
        Supplier<Roll> dice = new TrialDice(seed, trial);
        int first = dice.get().index();
        return first * Roll.COUNT + dice.get().index();
    }

    /** The number of doubles in a pair. */
    static int kind(int pair) {
        return KIND[pair];
    }

    /** Adds one trial of every candidate, the numbers placed as in {@link Moments#add}. */
    void add(double[] results, int at, int stride, int pair) {
        int count = ++counts[pair];
        double[] before = new double[means.length];
        double[] after = new double[means.length];
        for (int c = 0; c < means.length; c++) {
            // The value last, so that its distances stay.
            for (int k = series - 1; k >= 0; k--) {
                double value = results[at + c * stride + k];
                double[] mean = means[c][k];
                before[c] = value - mean[pair];
                mean[pair] += before[c] / count;
                after[c] = value - mean[pair];
                // Not below 0 but for rounding.
                within[c][k][KIND[pair]] += Math.max(0, before[c] * after[c]);
            }
            for (int other = 0; other < c; other++) {
                apart[c][other][KIND[pair]] += Math.max(0, (before[c] - before[other]) * (after[c] - after[other]));
            }
        }
    }

    /** The standard error of a number's mean. */
    double error(int candidate, int number) {
        return new StratifiedError(counts, means[candidate][number], within[candidate][number]).of();
    }

    /** The standard error of the mean difference of the values of a candidate and an earlier one. */
    double differenceError(int later, int earlier) {
        double[] one = means[later][Moments.VALUE];
        double[] other = means[earlier][Moments.VALUE];
        double[] difference =
                IntStream.range(0, PAIRS).mapToDouble(i -> one[i] - other[i]).toArray();
        return new StratifiedError(counts, difference, apart[later][earlier]).of();
    }

    /** All that is known, in an order that {@link #restore} reads back. */
    double[] contents() {
        DoubleStream all = Arrays.stream(counts).asDoubleStream();
        for (double[][][] part : parts()) {
            all = DoubleStream.concat(
                    all, Arrays.stream(part).flatMap(Arrays::stream).flatMapToDouble(Arrays::stream));
        }
        return all.toArray();
    }

    private double[][][][] parts() {
        return new double[][][][] {means, within, apart};
    }

    static int size(int candidates, int series) {
        return PAIRS + candidates * series * (PAIRS + KINDS) + candidates * (candidates - 1) / 2 * KINDS;
    }

    /**
     * Reads back.
     *
     * @param contents what {@link #contents} gave, of the right {@link #size}
     * @throws IllegalArgumentException if a count or a sum of squares is out of range
     */
    static Strata restore(int candidates, int series, int trials, double[] contents) {
        Strata strata = new Strata(candidates, series);
        int next = 0;
        long all = 0;
        for (int pair = 0; pair < PAIRS; pair++) {
            strata.counts[pair] = (int) contents[next];
            if (contents[next] < 0 || contents[next++] != strata.counts[pair]) {
                throw new IllegalArgumentException("no number of trials");
            }
            all += strata.counts[pair];
        }
        if (all != trials) {
            throw new IllegalArgumentException(all + " trials by rolls of " + trials);
        }
        for (double[][][] part : strata.parts()) {
            for (double[][] ofCandidate : part) {
                for (double[] numbers : ofCandidate) {
                    System.arraycopy(contents, next, numbers, 0, numbers.length);
                    next += numbers.length;
                    if (part != strata.means && Arrays.stream(numbers).anyMatch(spread -> spread < 0)) {
                        throw new IllegalArgumentException("a spread below 0");
                    }
                }
            }
        }
        return strata;
    }
}
