package org.pipwright.bench.games;

/**
 * A ratio of sums over clusters, such as legal plays over rolls by games, with the usual linearised standard error
 * (Cochran, Sampling Techniques, section 6.3): what belongs to one game is not independent, games are.
 */
public final class Ratio {
    private long clusters;
    private double above;
    private double below;
    private double squares;
    private double products;
    private double belowSquares;

    /** Adds the sums of one cluster. */
    public void add(double numerator, double denominator) {
        clusters++;
        above += numerator;
        below += denominator;
        squares += numerator * numerator;
        products += numerator * denominator;
        belowSquares += denominator * denominator;
    }

    /** The ratio; not a number if nothing was added. */
    public double value() {
        return above / below;
    }

    /** Its standard error; 0 with fewer than two clusters. */
    public double error() {
        if (clusters < 2) {
            return 0;
        }
        double ratio = value();
        double sum = squares - 2 * ratio * products + ratio * ratio * belowSquares;
        return Math.sqrt(Math.max(0, sum) * clusters / (clusters - 1.0)) / below;
    }
}
