package org.pipwright.engine.statistics;

import java.io.Serializable;

/**
 * The mean of a sample and its spread, brought up to date value by value or sample by sample in ways that lose no digits and
 * leave a sample whose values are all the same without any spread (B. P. Welford, Technometrics 4 (1962), 419-420; two
 * samples: T. F. Chan, G. H. Golub, R. J. LeVeque, Updating Formulae and a Pairwise Algorithm for Computing Sample Variances,
 * Stanford 1979; both from memory).
 *
 * @param count number of values, at least 0
 * @param mean of the values; 0 if there are none
 * @param spread sum of the squares of the values less their mean, at least 0
 */
public record RunningMean(long count, double mean, double spread) implements Serializable {
    /** No values yet. */
    public static final RunningMean NONE = new RunningMean(0, 0, 0);

    /**
     * Checks that such a sample can be.
     *
     * @param count number of values
     * @param mean of the values
     * @param spread sum of the squares of the values less their mean
     * @throws IllegalArgumentException if the count or the spread is negative
     */
    public RunningMean {
        if (count < 0 || spread < 0) {
            throw new IllegalArgumentException("a sample of " + count + " values with a spread of " + spread);
        }
    }

    /**
     * One value more.
     *
     * @param value the value
     * @return the sample with it
     */
    public RunningMean plus(double value) {
        double off = value - mean;
        double moved = mean + off / (count + 1);
        return new RunningMean(count + 1, moved, spread + off * (value - moved));
    }

    /**
     * Two samples put together.
     *
     * @param other the other sample
     * @return both
     */
    public RunningMean plus(RunningMean other) {
        if (count == 0 || other.count == 0) {
            return count == 0 ? other : this;
        }
        long both = count + other.count;
        double apart = other.mean - mean;
        return new RunningMean(
                both,
                mean + apart * other.count / both,
                spread + other.spread + apart * apart * ((double) count * other.count / both));
    }

    /**
     * The values summed.
     *
     * @return 0 if there are none
     */
    public double sum() {
        return mean * count;
    }

    /**
     * Unbiased estimate of the variance of one value.
     *
     * @return 0 if there are fewer than two values
     */
    public double variance() {
        return count < 2 ? 0 : spread / (count - 1);
    }

    /**
     * Standard error of the mean.
     *
     * @return 0 if there are fewer than two values
     */
    public double standardError() {
        return count < 2 ? 0 : Math.sqrt(variance() / count);
    }
}
