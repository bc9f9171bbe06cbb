package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** All numbers of all trials with the cube so far: a few, so that means and errors come from them directly. */
final class CubefulSums {
    private final int candidates;
    private final double unit;
    private final double sure;
    /** [candidate][number][trial]. */
    private final double[][][] all;

    private int trials;

    /**
     * Sums of nothing.
     *
     * @param candidates number of candidates
     * @param unit what values are divided by
     * @param sure as in the settings
     */
    CubefulSums(int candidates, double unit, double sure) {
        this.candidates = candidates;
        this.unit = unit;
        this.sure = sure;
        all = new double[candidates][CubefulTrial.NUMBERS][RolloutSettings.ROUND];
    }

    int trials() {
        return trials;
    }

    /** Adds a trial of every candidate. */
    void add(double[] results, int at, int stride) {
        for (int c = 0; c < candidates; c++) {
            for (int k = 0; k < CubefulTrial.NUMBERS; k++) {
                if (trials == all[c][k].length) {
                    all[c][k] = Arrays.copyOf(all[c][k], 2 * trials);
                }
                double number = results[at + c * stride + k];
                all[c][k][trials] = k < 2 ? number / unit : number;
            }
        }
        trials++;
    }

    CubefulRolloutReport report() {
        List<Integer> order = new ArrayList<>();
        double[] means = new double[candidates];
        for (int c = 0; c < candidates; c++) {
            order.add(c);
            means[c] = estimate(all[c][0], null).mean();
        }
        order.sort(Comparator.comparingDouble(c -> -means[c]));
        List<CubefulLine> lines = new ArrayList<>();
        order.forEach(c -> lines.add(line(c, order.get(0))));
        boolean asked = sure > 0 && candidates > 1;
        double needed = asked ? new RepeatedLooks(sure, candidates - 1).needed(trials) : 0;
        boolean clear = asked
                && lines.stream()
                        .skip(1)
                        .map(CubefulLine::behind)
                        .allMatch(behind -> -behind.mean() > needed * behind.standardError());
        return new CubefulRolloutReport(trials, lines, needed, clear);
    }

    private CubefulLine line(int candidate, int best) {
        double[][] mine = all[candidate];
        Estimate value = estimate(mine[0], null);
        Estimate plain = estimate(mine[1], null);
        return new CubefulLine(
                candidate,
                value,
                candidate == best ? new Estimate(0, 0) : estimate(mine[0], all[best][0]),
                plain,
                Math.pow(plain.standardError() / value.standardError(), 2),
                estimate(mine[2], null).mean(),
                estimate(mine[3], null).mean(),
                estimate(mine[4], null).mean());
    }

    /** Mean of numbers, or of their differences from others, in two passes. */
    private Estimate estimate(double[] numbers, double[] others) {
        double mean = 0;
        for (int t = 0; t < trials; t++) {
            mean += difference(numbers, others, t) / trials;
        }
        double squares = 0;
        for (int t = 0; t < trials; t++) {
            double off = difference(numbers, others, t) - mean;
            squares += off * off;
        }
        return new Estimate(mean, Math.sqrt(squares / (trials - 1) / trials));
    }

    private static double difference(double[] numbers, double[] others, int trial) {
        return others == null ? numbers[trial] : numbers[trial] - others[trial];
    }
}
