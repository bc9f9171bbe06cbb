package org.pipwright.bench.explain;

/**
 * Least squares through the origin with weights that may not be negative, by coordinate descent on the normal equations,
 * which finds the one minimum of a convex problem. Columns are scaled by their root mean square; a small ridge keeps columns
 * that say the same from running apart.
 */
final class SignedFit {
    private static final double RIDGE = 0.01;
    private static final int SWEEPS = 2000;
    private final int columns;
    private final double[][] products;
    private final double[] targets;
    private double squares;
    private long rows;

    SignedFit(int columns) {
        this.columns = columns;
        products = new double[columns][columns];
        targets = new double[columns];
    }

    /** Adds a row. */
    void add(double[] row, double target) {
        for (int i = 0; i < columns; i++) {
            targets[i] += row[i] * target;
            for (int j = 0; j < columns; j++) {
                products[i][j] += row[i] * row[j];
            }
        }
        squares += target * target;
        rows++;
    }

    long rows() {
        return rows;
    }

    /** The weights, each at least 0; 0 for columns that are 0 in every row. */
    double[] weights() {
        double[] weights = new double[columns];
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            for (int i = 0; i < columns; i++) {
                if (products[i][i] > 0) {
                    double rest = targets[i];
                    for (int j = 0; j < columns; j++) {
                        rest -= j == i ? 0 : products[i][j] * weights[j];
                    }
                    weights[i] = Math.max(0, rest / (products[i][i] * (1 + RIDGE)));
                }
            }
        }
        return weights;
    }

    /** Share of the targets' mean square that weights explain, at most 1. */
    double explained(double[] weights) {
        double error = squares;
        for (int i = 0; i < columns; i++) {
            error -= 2 * weights[i] * targets[i];
            for (int j = 0; j < columns; j++) {
                error += weights[i] * weights[j] * products[i][j];
            }
        }
        return 1 - error / squares;
    }
}
