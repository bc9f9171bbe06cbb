package org.pipwright.engine.rollout;

import org.pipwright.engine.roll.Roll;

/**
 * The standard error of a mean of trials whose first two throws are spread as {@link TrialDice} does it. What a trial comes
 * to is taken apart: what the first roll does whatever the second is, what the second does whatever the first is, what the
 * two do together beyond that, and the rest. The first two parts are there in equal shares in each round of 36 trials, so
 * they put no error on the mean. The third is there in equal shares in each whole block of 1,296, and what is left of it in a
 * part of a block is that of a sample without replacement. The rest is estimated from trials with the same pair of rolls.
 */
final class StratifiedError {
    /**
     * From how many trials on: each roll has then come first and second eight times at least. With fewer of them a result
     * that follows a rare roll may look as if the roll alone explained it, which would leave no error.
     */
    static final int FEWEST = 8 * TrialDice.THROWS;

    /** What the two rolls explain by themselves: a mean, and 20 numbers each. */
    private static final int EXPLAINED = 2 * Roll.COUNT - 1;

    /** As many repetitions give the rest; before, what the two rolls do together counts as part of it. */
    private static final int REPETITIONS = 36;

    private static final int MAX_STEPS = 200;
    private static final double ENOUGH = 1e-9;

    /** How often pairs with none, one and two doubles come. */
    private static final double[] SHARES = {25 / 36.0, 10 / 36.0, 1 / 36.0};

    private final int[] counts;
    private final double[] means;
    private final double[] within;
    private final int trials;

    /**
     * Of one number.
     *
     * @param counts trials by pair of rolls
     * @param means their means
     * @param within by {@link Strata#kind}, the sum of squares about these
     */
    StratifiedError(int[] counts, double[] means, double[] within) {
        this.counts = counts;
        this.means = means;
        this.within = within;
        int all = 0;
        for (int count : counts) {
            all += count;
        }
        trials = all;
    }

    /** The error; there must be at least {@link #FEWEST} trials. */
    double of() {
        double both = unexplained() / (trials - EXPLAINED);
        double rest = repeated() < REPETITIONS ? both : Math.min(rest(), both);
        int part = trials % TrialDice.BLOCK;
        double missing = (TrialDice.BLOCK - part) / (double) (TrialDice.BLOCK - TrialDice.THROWS);
        double together = part == 0 ? 0 : (both - rest) * missing * part / trials;
        return Math.sqrt((rest + together) / trials);
    }

    /** Trials beyond the first of each pair. */
    private int repeated(int kind) {
        int repeated = 0;
        for (int pair = 0; pair < counts.length; pair++) {
            repeated += Strata.kind(pair) == kind && counts[pair] > 1 ? counts[pair] - 1 : 0;
        }
        return repeated;
    }

    /** Of the two kinds that most trials are of. */
    private int repeated() {
        return Math.min(repeated(0), repeated(1));
    }

    /** Variance of trials with the same pair of rolls; two doubles, of which there are few, are taken with one. */
    private double rest() {
        double few = (within[1] + within[2]) / (repeated(1) + repeated(2));
        int doubles = repeated(2);
        double two = doubles < TrialDice.THROWS ? few : within[2] / doubles;
        double one = within[1] / repeated(1);
        return SHARES[0] * within[0] / repeated(0) + SHARES[1] * one + SHARES[2] * two;
    }

    /** Sum of squares that the two rolls by themselves leave, by least squares: each side's part in turn from the other's. */
    private double unexplained() {
        double mean = 0;
        for (int pair = 0; pair < counts.length; pair++) {
            mean += counts[pair] * (means[pair] / trials);
        }
        double[] left = new double[counts.length];
        for (int pair = 0; pair < counts.length; pair++) {
            left[pair] = means[pair] - mean;
        }
        double before = Double.POSITIVE_INFINITY;
        double now = squares(left);
        for (int step = 0; step < MAX_STEPS && before - now > ENOUGH * now; step++) {
            takeOff(left, Roll.COUNT, 1);
            takeOff(left, 1, Roll.COUNT);
            before = now;
            now = squares(left);
        }
        return now + within[0] + within[1] + within[2];
    }

    /** Takes off the mean of each roll: the first one's with steps (21, 1), the second one's with (1, 21). */
    private void takeOff(double[] left, int stepOfRoll, int step) {
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            double sum = 0;
            int count = 0;
            for (int i = 0; i < Roll.COUNT; i++) {
                int pair = roll * stepOfRoll + i * step;
                sum += counts[pair] * left[pair];
                count += counts[pair];
            }
            double mean = count == 0 ? 0 : sum / count;
            for (int i = 0; i < Roll.COUNT; i++) {
                left[roll * stepOfRoll + i * step] -= mean;
            }
        }
    }

    private double squares(double[] left) {
        double squares = 0;
        for (int pair = 0; pair < counts.length; pair++) {
            squares += counts[pair] * left[pair] * left[pair];
        }
        return squares;
    }
}
