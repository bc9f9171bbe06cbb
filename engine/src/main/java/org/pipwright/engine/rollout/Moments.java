package org.pipwright.engine.rollout;

import org.pipwright.engine.evaluation.Outcomes;

/**
 * Sums over the trials so far, from which means and standard errors follow. Values are of the size of 1 to 10, so sums of
 * squares of some million trials keep all the digits that matter.
 */
final class Moments {
    /** Numbers followed for each candidate: six chances, equity, equity without luck adjustment. */
    static final int SERIES = Outcomes.COUNT + 2;

    static final int EQUITY = Outcomes.COUNT;
    static final int PLAIN = Outcomes.COUNT + 1;

    private final int candidates;
    private final double[][] sums;
    private final double[][] squares;
    /** Sums of products of two candidates' equities in the same trial. */
    private final double[][] products;

    private final double[] one = new double[SERIES];
    private final double[] equities;
    private int trials;

    Moments(int candidates) {
        this.candidates = candidates;
        sums = new double[candidates][SERIES];
        squares = new double[candidates][SERIES];
        products = new double[candidates][candidates];
        equities = new double[candidates];
    }

    /**
     * Adds one trial of every candidate.
     *
     * @param results twelve numbers a candidate, as {@link Trial#play} writes them
     * @param at index of the first candidate's
     * @param stride from one candidate's to the next's
     */
    void add(double[] results, int at, int stride) {
        for (int c = 0; c < candidates; c++) {
            int from = at + c * stride;
            System.arraycopy(results, from + Outcomes.COUNT, one, 0, Outcomes.COUNT);
            one[EQUITY] = equity(results, from + Outcomes.COUNT);
            one[PLAIN] = equity(results, from);
            equities[c] = one[EQUITY];
            for (int k = 0; k < SERIES; k++) {
                sums[c][k] += one[k];
                squares[c][k] += one[k] * one[k];
            }
            for (int other = 0; other < c; other++) {
                products[c][other] += equities[c] * equities[other];
            }
        }
        trials++;
    }

    private static double equity(double[] chances, int at) {
        return chances[at]
                + 2 * chances[at + 1]
                + 3 * chances[at + 2]
                - chances[at + 3]
                - 2 * chances[at + 4]
                - 3 * chances[at + 5];
    }

    /**
     * All sums one after another, in an order that {@link #restore} reads back.
     *
     * @return sums and squares of each series of each candidate, then the products of each pair
     */
    double[] contents() {
        double[] all = new double[size(candidates)];
        int next = 0;
        for (int c = 0; c < candidates; c++) {
            System.arraycopy(sums[c], 0, all, next, SERIES);
            System.arraycopy(squares[c], 0, all, next + SERIES, SERIES);
            System.arraycopy(products[c], 0, all, next + 2 * SERIES, c);
            next += 2 * SERIES + c;
        }
        return all;
    }

    static int size(int candidates) {
        return 2 * SERIES * candidates + candidates * (candidates - 1) / 2;
    }

    static Moments restore(int candidates, int trials, double[] contents) {
        Moments moments = new Moments(candidates);
        moments.trials = trials;
        int next = 0;
        for (int c = 0; c < candidates; c++) {
            System.arraycopy(contents, next, moments.sums[c], 0, SERIES);
            System.arraycopy(contents, next + SERIES, moments.squares[c], 0, SERIES);
            System.arraycopy(contents, next + 2 * SERIES, moments.products[c], 0, c);
            next += 2 * SERIES + c;
        }
        return moments;
    }

    int trials() {
        return trials;
    }

    double mean(int candidate, int series) {
        return sums[candidate][series] / trials;
    }

    /** Variance of a single trial. */
    double variance(int candidate, int series) {
        double sum = sums[candidate][series];
        return Math.max(0, (squares[candidate][series] - sum * sum / trials) / (trials - 1));
    }

    Estimate estimate(int candidate, int series) {
        return new Estimate(mean(candidate, series), Math.sqrt(variance(candidate, series) / trials));
    }

    /** Equity of one candidate less another's; the same dice make its error smaller than those of the two. */
    Estimate difference(int candidate, int other) {
        if (candidate == other) {
            return new Estimate(0, 0);
        }
        double product = products[Math.max(candidate, other)][Math.min(candidate, other)];
        double covariance = (product - sums[candidate][EQUITY] * sums[other][EQUITY] / trials) / (trials - 1);
        double variance = Math.max(0, variance(candidate, EQUITY) + variance(other, EQUITY) - 2 * covariance);
        return new Estimate(mean(candidate, EQUITY) - mean(other, EQUITY), Math.sqrt(variance / trials));
    }
}
