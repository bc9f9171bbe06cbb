package org.pipwright.engine.rollout;

import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Means and spreads over the trials so far of some numbers of each candidate, and of how far candidates are apart in the
 * same trial. Brought up to date trial by trial in a way that loses no digits, and that leaves numbers which never change
 * without any spread (Welford, Technometrics 4 (1962), 419-420; from memory).
 */
final class Moments {
    /** Of the numbers of a trial, the one that candidates are compared by. */
    static final int VALUE = 0;

    /** The same without luck adjustment. */
    static final int PLAIN = 1;

    private final int candidates;
    private final int series;
    private final double[][] means;
    /** Sums of the squares of what lies between the numbers and their mean. */
    private final double[][] spreads;

    /** Of the value of one candidate less that of an earlier one. */
    private final double[][] meanDifferences;

    private final double[][] differenceSpreads;
    private int trials;

    /**
     * Of no trials.
     *
     * @param candidates number of candidates
     * @param series numbers a trial has for each, at least 2
     */
    Moments(int candidates, int series) {
        this.candidates = candidates;
        this.series = series;
        means = new double[candidates][series];
        spreads = new double[candidates][series];
        meanDifferences = new double[candidates][];
        differenceSpreads = new double[candidates][];
        for (int c = 0; c < candidates; c++) {
            meanDifferences[c] = new double[c];
            differenceSpreads[c] = new double[c];
        }
    }

    /**
     * Adds one trial of every candidate.
     *
     * @param results where its numbers are
     * @param at index of the first candidate's
     * @param stride from one candidate's to the next's
     */
    void add(double[] results, int at, int stride) {
        trials++;
        for (int c = 0; c < candidates; c++) {
            int from = at + c * stride;
            for (int k = 0; k < series; k++) {
                add(results[from + k], means[c], spreads[c], k);
            }
            for (int other = 0; other < c; other++) {
                double difference = results[from + VALUE] - results[at + other * stride + VALUE];
                add(difference, meanDifferences[c], differenceSpreads[c], other);
            }
        }
    }

    private void add(double number, double[] mean, double[] spread, int k) {
        double off = number - mean[k];
        mean[k] += off / trials;
        spread[k] += off * (number - mean[k]);
    }

    /**
     * All that is known but the number of trials, in an order that {@link #restore} reads back.
     *
     * @return of each candidate its means, then its spreads, then those of its differences
     */
    double[] contents() {
        double[] all = new double[size(candidates, series)];
        int next = 0;
        for (double[] part : parts()) {
            System.arraycopy(part, 0, all, next, part.length);
            next += part.length;
        }
        return all;
    }

    static int size(int candidates, int series) {
        return 2 * series * candidates + candidates * (candidates - 1);
    }

    /**
     * Reads back.
     *
     * @param contents what {@link #contents} gave, of the right {@link #size}
     * @throws IllegalArgumentException if a spread is negative
     */
    static Moments restore(int candidates, int series, int trials, double[] contents) {
        Moments moments = new Moments(candidates, series);
        moments.trials = trials;
        int next = 0;
        for (double[] part : moments.parts()) {
            System.arraycopy(contents, next, part, 0, part.length);
            next += part.length;
        }
        moments.requireSpreads();
        return moments;
    }

    private void requireSpreads() {
        if (Stream.of(spreads, differenceSpreads)
                .flatMap(Stream::of)
                .flatMapToDouble(DoubleStream::of)
                .anyMatch(spread -> spread < 0)) {
            throw new IllegalArgumentException("a spread is negative");
        }
    }

    private double[][] parts() {
        double[][] parts = new double[4 * candidates][];
        for (int c = 0; c < candidates; c++) {
            parts[4 * c] = means[c];
            parts[4 * c + 1] = spreads[c];
            parts[4 * c + 2] = meanDifferences[c];
            parts[4 * c + 3] = differenceSpreads[c];
        }
        return parts;
    }

    int candidates() {
        return candidates;
    }

    int trials() {
        return trials;
    }

    double mean(int candidate, int series) {
        return means[candidate][series];
    }

    Estimate estimate(int candidate, int series) {
        return estimate(means[candidate][series], spreads[candidate][series]);
    }

    private Estimate estimate(double mean, double spread) {
        return new Estimate(mean, Math.sqrt(spread / (trials - 1) / trials));
    }

    /** Value of one candidate less another's; the same dice make its error smaller than those of the two. */
    Estimate difference(int candidate, int other) {
        if (candidate == other) {
            return new Estimate(0, 0);
        }
        int later = Math.max(candidate, other);
        int earlier = Math.min(candidate, other);
        double mean = meanDifferences[later][earlier];
        return estimate(candidate == later ? mean : -mean, differenceSpreads[later][earlier]);
    }

    /** Variance without luck adjustment over that with it; not a number if all trials agree. */
    double reduction(int candidate) {
        return spreads[candidate][PLAIN] / spreads[candidate][VALUE];
    }
}
