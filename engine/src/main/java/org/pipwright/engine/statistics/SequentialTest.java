package org.pipwright.engine.statistics;

/**
 * Wald's sequential probability ratio test (Annals of Mathematical Statistics 16, 1945) between two means of points a
 * game, on the values of pairs.
 *
 * <p>Values are taken as normal with the same variance under both hypotheses, so that the log-likelihood ratio of n values
 * is (high - low) / variance * (sum - n * (low + high) / 2). The variance is not known: the estimate from all pairs so far
 * stands in for it, at every look anew, and nothing is decided before {@link #MIN_PAIRS} pairs, where its own error no
 * longer matters beside the limits. A floor on the variance lets players that hardly differ come to an end.
 *
 * @param low mean of the lower hypothesis, in points a game
 * @param high mean of the higher one, above low
 * @param alpha chance to accept high where low is true, in (0, 0.5)
 * @param beta chance to accept low where high is true, in (0, 0.5)
 */
public record SequentialTest(double low, double high, double alpha, double beta) {
    /** No verdict before so many pairs. */
    public static final int MIN_PAIRS = 512;

    /** Least variance of a pair assumed: that of players of which one pair in 25 differs, by half a point a game. */
    private static final double MIN_VARIANCE = 0.01;

    /** What the test says. */
    public enum Verdict {
        /** The lower mean is accepted. */
        LOW,
        /** The higher mean is accepted. */
        HIGH,
        /** More pairs are needed. */
        UNDECIDED
    }

    /**
     * Checks the hypotheses.
     *
     * @param low lower mean
     * @param high higher mean
     * @param alpha error rate under low
     * @param beta error rate under high
     * @throws IllegalArgumentException if a value is out of range
     */
    public SequentialTest {
        if (!(low < high && low >= -3 && high <= 3)) {
            throw new IllegalArgumentException(
                    "the two means of a test go from -3 to 3 points, the lower first, not " + low + " and " + high);
        }
        if (!(alpha > 0 && alpha < 0.5 && beta > 0 && beta < 0.5)) {
            throw new IllegalArgumentException(
                    "the error rates of a test lie between 0 and 0.5, not " + alpha + " and " + beta);
        }
    }

    /**
     * The usual test: no better against 0.02 points a game better, each error with a chance of 0.05.
     *
     * @return the test
     */
    public static SequentialTest usual() {
        return new SequentialTest(0, 0.02, 0.05, 0.05);
    }

    /**
     * The usual test of matches: as good against winning 51 of 100, each error with a chance of 0.05.
     *
     * @return the test, of the share of matches won
     */
    public static SequentialTest usualOfMatches() {
        return new SequentialTest(0.5, 0.51, 0.05, 0.05);
    }

    /**
     * The log-likelihood ratio of high to low.
     *
     * @param pairs one value a pair, in points a game
     * @return natural logarithm; 0 if there are no pairs
     */
    public double ratio(RunningMean pairs) {
        double variance = Math.max(MIN_VARIANCE, pairs.variance());
        return (high - low) / variance * (pairs.count() * (pairs.mean() - (low + high) / 2));
    }

    /**
     * At or below this ratio low is accepted.
     *
     * @return ln(beta / (1 - alpha)), negative
     */
    public double lowerLimit() {
        return Math.log(beta / (1 - alpha));
    }

    /**
     * At or above this ratio high is accepted.
     *
     * @return ln((1 - beta) / alpha), positive
     */
    public double upperLimit() {
        return Math.log((1 - beta) / alpha);
    }

    /**
     * What the pairs so far say.
     *
     * @param pairs one value a pair, in points a game
     * @return the verdict
     */
    public Verdict verdict(RunningMean pairs) {
        if (pairs.count() < MIN_PAIRS) {
            return Verdict.UNDECIDED;
        }
        double ratio = ratio(pairs);
        return ratio >= upperLimit() ? Verdict.HIGH : ratio <= lowerLimit() ? Verdict.LOW : Verdict.UNDECIDED;
    }
}
