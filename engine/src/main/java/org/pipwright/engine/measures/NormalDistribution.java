package org.pipwright.engine.measures;

/** The standard normal distribution. */
final class NormalDistribution {
    private NormalDistribution() {}

    /**
     * Chance of a value below x, by the Taylor series of G. Marsaglia, Evaluating the Normal Distribution, Journal of
     * Statistical Software 11(4), 2004.
     */
    static double below(double x) {
        if (Math.abs(x) > 8) {
            return x > 0 ? 1 : 0;
        }
        double sum = x;
        double term = x;
        for (int i = 3; sum + term * x * x / i != sum; i += 2) {
            term *= x * x / i;
            sum += term;
        }
        return 0.5 + sum * Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
    }
}
