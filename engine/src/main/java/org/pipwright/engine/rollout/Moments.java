package org.pipwright.engine.rollout;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.pipwright.engine.statistics.RunningMean;

/**
 * Means and spreads over the trials so far of some numbers of each candidate, and of how far candidates are apart in the
 * same trial.
 */
final class Moments {
    /** Of the numbers of a trial, the one that candidates are compared by. */
    static final int VALUE = 0;

    /** The same without luck adjustment. */
    static final int PLAIN = 1;

    /** A variance of games that differ by the rounding of chances given as floats only. */
    private static final double ROUNDING = 1e-12;

    private final int series;
    private final RunningMean[][] numbers;

    /** Of the value of one candidate less that of an earlier one. */
    private final RunningMean[][] differences;

    /** Null if trials are not known by their rolls: errors then take them as independent. */
    private final Strata strata;

    /** By candidate, the value of another result where all games may have come to the same by chance; null if none has one. */
    private DoubleUnaryOperator[] others;

    private int trials;

    /**
     * Of no trials.
     *
     * @param candidates number of candidates
     * @param series numbers a trial has for each, at least 2
     */
    Moments(int candidates, int series) {
        this(candidates, series, new Strata(candidates, series));
    }

    private Moments(int candidates, int series, Strata strata) {
        this.series = series;
        this.strata = strata;
        numbers = new RunningMean[candidates][series];
        differences = new RunningMean[candidates][];
        for (int c = 0; c < candidates; c++) {
            differences[c] = new RunningMean[c];
            Arrays.fill(numbers[c], RunningMean.NONE);
            Arrays.fill(differences[c], RunningMean.NONE);
        }
    }

    /**
     * Adds one trial of every candidate.
     *
     * @param results where its numbers are
     * @param at index of the first candidate's
     * @param stride from one candidate's to the next's
     * @param pair the rolls it began with, as {@link Strata#pair}
     */
    void add(double[] results, int at, int stride, int pair) {
        trials++;
        if (strata != null) {
            strata.add(results, at, stride, pair);
        }
        for (int c = 0; c < numbers.length; c++) {
            int from = at + c * stride;
            for (int k = 0; k < series; k++) {
                numbers[c][k] = numbers[c][k].plus(results[from + k]);
            }
            for (int other = 0; other < c; other++) {
                double difference = results[from + VALUE] - results[at + other * stride + VALUE];
                differences[c][other] = differences[c][other].plus(difference);
            }
        }
    }

    /**
     * All that is known but the number of trials and their strata, in an order that {@link #restore} reads back.
     *
     * @return of each candidate its means, then its spreads, then those of its differences
     */
    double[] contents() {
        return Stream.iterate(0, c -> c < numbers.length, c -> c + 1)
                .flatMap(c -> Stream.of(numbers[c], differences[c]))
                .flatMapToDouble(part -> DoubleStream.concat(
                        Arrays.stream(part).mapToDouble(RunningMean::mean),
                        Arrays.stream(part).mapToDouble(RunningMean::spread)))
                .toArray();
    }

    static int size(int candidates, int series) {
        return 2 * series * candidates + candidates * (candidates - 1);
    }

    /**
     * Reads back.
     *
     * @param contents what {@link #contents} gave, of the right {@link #size}
     * @param strata of the same trials; null if they were not kept
     * @throws IllegalArgumentException if a spread is negative
     */
    static Moments restore(int candidates, int series, int trials, double[] contents, Strata strata) {
        Moments moments = new Moments(candidates, series, strata);
        moments.trials = trials;
        int next = 0;
        for (int c = 0; c < candidates; c++) {
            for (RunningMean[] part : List.of(moments.numbers[c], moments.differences[c])) {
                for (int k = 0; k < part.length; k++) {
                    part[k] = new RunningMean(trials, contents[next + k], contents[next + part.length + k]);
                }
                next += 2 * part.length;
            }
        }
        return moments;
    }

    /**
     * Says that results which are all the same need not be sure: one game more might have come to another.
     *
     * @param others by candidate, what that would be worth, from the value of what came; null where nothing else can come
     */
    void unsure(DoubleUnaryOperator[] others) {
        this.others = others.clone();
    }

    /** The trials by their rolls, unless nothing is known of these. */
    Optional<Strata> strata() {
        return Optional.ofNullable(strata);
    }

    int candidates() {
        return numbers.length;
    }

    int trials() {
        return trials;
    }

    double mean(int candidate, int series) {
        return numbers[candidate][series].mean();
    }

    Estimate estimate(int candidate, int series) {
        RunningMean mean = numbers[candidate][series];
        boolean unsure = others != null && others[candidate] != null && series <= PLAIN && mean.spread() == 0;
        if (unsure && trials > 0) {
            double range = mean.mean() - others[candidate].applyAsDouble(mean.mean());
            return new Estimate(mean.mean(), StratifiedError.ofSame(trials, Math.abs(range)));
        }
        return new Estimate(mean.mean(), stratified() ? strata.error(candidate, series) : mean.standardError());
    }

    /** Value of one candidate less another's; the same dice make its error smaller than those of the two. */
    Estimate difference(int candidate, int other) {
        if (candidate == other) {
            return new Estimate(0, 0);
        }
        int later = Math.max(candidate, other);
        int earlier = Math.min(candidate, other);
        RunningMean difference = differences[later][earlier];
        double mean = difference.mean();
        double error = stratified() ? strata.differenceError(later, earlier) : difference.standardError();
        return new Estimate(candidate == later ? mean : -mean, error);
    }

    private boolean stratified() {
        return strata != null && trials >= TrialDice.THROWS;
    }

    /**
     * Variance of the mean without luck adjustment over that with it; infinite if nothing but luck made games differ, not a
     * number if nothing did.
     */
    double reduction(int candidate) {
        double plain = variance(candidate, PLAIN);
        double value = variance(candidate, VALUE);
        if (plain <= ROUNDING) {
            return Double.NaN;
        }
        return value <= ROUNDING ? Double.POSITIVE_INFINITY : plain / value;
    }

    /** Of one trial among as many independent ones with the same error of their mean. */
    private double variance(int candidate, int series) {
        double error = estimate(candidate, series).standardError();
        return error * error * trials;
    }
}
