package org.pipwright.engine.rollout;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.pipwright.engine.roll.Roll;

/**
 * The standard error of a mean of trials whose first two throws are spread as {@link TrialDice} does it. What a trial comes
 * to is taken apart: what the first roll does whatever the second is, what the second does whatever the first is, what the
 * two do together beyond that, and the rest. The first two parts are there in equal shares in each round of 36 trials, so
 * they put no error on the mean. The third is there in equal shares in each whole block of 1,296, and what is left of it in a
 * part of a block is that of a sample without replacement. The rest is estimated from trials with the same pair of rolls.
 *
 * <p>A single round has too few trials to tell all rolls apart. There rolls of about as many pips count as one, which leaves
 * a part of what they explain in the error: strata collapsed, whose error is rather too large (W. G. Cochran, Sampling
 * Techniques, 3rd edition, New York 1977, 5A.12; from memory).
 *
 * <p>By chance the rolls may seem to explain everything, where something rare has not yet come or has come once with a roll
 * of its own. So the variance is at least what one more trial beyond all parameters would say that lies off by 0.7 of the
 * range of the results: the thought of the rule of succession, its size found by measuring ({@code benchmarks/run
 * rollout-errors}).
 */
final class StratifiedError {
    /** From how many trials on each roll counts for itself: it has then come first and second twice at least. */
    static final int EACH_ROLL = 2 * TrialDice.THROWS;

    /** As many repetitions give the rest; before, what the two rolls do together counts as part of it. */
    private static final int REPETITIONS = 36;

    /** The square of how far off one more trial might be, in that of the range of the results. */
    private static final double SURPRISE = 0.5;

    private static final int MAX_STEPS = 200;
    private static final double ENOUGH = 1e-9;

    /** How often pairs with none, one and two doubles come. */
    private static final double[] SHARES = {25 / 36.0, 10 / 36.0, 1 / 36.0};

    private static final int[] ALONE = IntStream.range(0, Roll.COUNT).toArray();

    /** By roll, those of about as many pips together, the doubles apart. */
    private static final int[] COLLAPSED =
            Roll.all().stream().mapToInt(StratifiedError::group).toArray();

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

    private static int group(Roll roll) {
        int sum = roll.high() + roll.low();
        if (roll.isDouble()) {
            return roll.high() < 3 ? 0 : 1;
        }
        return sum <= 4 ? 2 : Math.min(sum, 9) - 2;
    }

    /** The error of a mean of trials all with the same result, had one more gone off it by so much. */
    static double ofSame(int trials, double range) {
        return Math.sqrt(SURPRISE / (trials + 1) / trials) * range;
    }

    /** The error; there must be a full round of trials. */
    double of() {
        if (trials < EACH_ROLL) {
            return Math.sqrt(variance(COLLAPSED) / trials);
        }
        double both = variance(ALONE);
        double rest = repeated() < REPETITIONS ? both : Math.min(Math.max(rest(), surprise(repeatedInAll())), both);
        int part = trials % TrialDice.BLOCK;
        double missing = (TrialDice.BLOCK - part) / (double) (TrialDice.BLOCK - TrialDice.THROWS);
        double together = part == 0 ? 0 : (both - rest) * missing * part / trials;
        return Math.sqrt((rest + together) / trials);
    }

    /** Of a trial, beyond what the two rolls explain by themselves if those of a group do the same. */
    private double variance(int[] groups) {
        // A mean, and for each side a number for each group but one.
        int explained = 2 * (int) Arrays.stream(groups).distinct().count() - 1;
        return Math.max(unexplained(groups) / (trials - explained), surprise(trials - explained));
    }

    private double surprise(int free) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int pair = 0; pair < counts.length; pair++) {
            least = counts[pair] == 0 ? least : Math.min(least, means[pair]);
            most = counts[pair] == 0 ? most : Math.max(most, means[pair]);
        }
        return SURPRISE * (most - least) * (most - least) / (free + 1);
    }

    private int repeatedInAll() {
        return repeated(0) + repeated(1) + repeated(2);
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
    private double unexplained(int[] groups) {
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
            takeOff(left, groups, Roll.COUNT, 1);
            takeOff(left, groups, 1, Roll.COUNT);
            before = now;
            now = squares(left);
        }
        return now + within[0] + within[1] + within[2];
    }

    /** Takes off the mean of each group: the first roll's with steps (21, 1), the second one's with (1, 21). */
    private void takeOff(double[] left, int[] groups, int stepOfRoll, int step) {
        double[] sums = new double[Roll.COUNT];
        int[] numbers = new int[Roll.COUNT];
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            for (int i = 0; i < Roll.COUNT; i++) {
                int pair = roll * stepOfRoll + i * step;
                sums[groups[roll]] += counts[pair] * left[pair];
                numbers[groups[roll]] += counts[pair];
            }
        }
        for (int roll = 0; roll < Roll.COUNT; roll++) {
            int group = groups[roll];
            double mean = numbers[group] == 0 ? 0 : sums[group] / numbers[group];
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
