package org.pipwright.engine.duel;

/**
 * Sums that give the mean of a sample and its standard error.
 *
 * @param count number of values
 * @param sum of the values
 * @param squares sum of their squares
 */
public record Moments(long count, double sum, double squares) {
    /** No values yet. */
    public static final Moments NONE = new Moments(0, 0, 0);

    /**
     * One value more.
     *
     * @param value the value
     * @return the sums with it
     */
    public Moments plus(double value) {
        return new Moments(count + 1, sum + value, squares + value * value);
    }

    /**
     * Two samples put together.
     *
     * @param other the other sample
     * @return the sums of both
     */
    public Moments plus(Moments other) {
        return new Moments(count + other.count, sum + other.sum, squares + other.squares);
    }

    /**
     * Mean.
     *
     * @return 0 if there are no values
     */
    public double mean() {
        return count == 0 ? 0 : sum / count;
    }

    /**
     * Unbiased estimate of the variance of one value.
     *
     * @return 0 if there are fewer than two values
     */
    public double variance() {
        return count < 2 ? 0 : Math.max(0, (squares - sum * sum / count) / (count - 1));
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
