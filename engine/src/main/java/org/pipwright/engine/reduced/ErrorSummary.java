package org.pipwright.engine.reduced;

/**
 * How far an evaluator's equities are from the exact ones, in points per game.
 *
 * @param mean weighted mean of the absolute differences
 * @param p99 the weighted 99th percentile, rounded up to a multiple of 0.00001
 */
public record ErrorSummary(double mean, double p99) {
    /** Collects weighted errors. */
    static final class Collector {
        private static final int BINS_A_POINT = 100_000;

        /** Equities lie between -3 and 3. */
        private static final int BINS = 6 * BINS_A_POINT + 2;

        private final double[] weightOfBin = new double[BINS];
        private double weights;
        private double sum;

        void add(double error, double weight) {
            weightOfBin[(int) Math.ceil(error * BINS_A_POINT)] += weight;
            weights += weight;
            sum += error * weight;
        }

        ErrorSummary summary() {
            double below = 0;
            int bin = -1;
            while (below < 0.99 * weights) {
                below += weightOfBin[++bin];
            }
            return new ErrorSummary(sum / weights, (double) bin / BINS_A_POINT);
        }
    }
}
