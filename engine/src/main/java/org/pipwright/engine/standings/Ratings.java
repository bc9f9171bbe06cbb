package org.pipwright.engine.standings;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Ratings in points per game: the numbers whose differences come closest to the results of the duels, one player's being
 * 0 by definition. "Closest" is weighted least squares: each duel's mean is taken as rating of A less rating of B plus an
 * independent error of the size of its standard error (weights as in Aitken, Proceedings of the Royal Society of Edinburgh 55, 1935;
 * normal equations solved by Commons Math).
 *
 * <p>Points per game need not add up: beating two players by 1 each says little about the third game. How badly they fail
 * to is measured by chi-squared, the sum of squared residuals over their errors; where it exceeds its degrees of freedom,
 * all errors are widened by the square root of the ratio (Birge, Physical Review 40, 1932).
 */
public final class Ratings {
    private final double[] points;
    private final double[] errors;
    private final double chiSquared;
    private final int freedom;

    private Ratings(double[] points, double[] errors, double chiSquared, int freedom) {
        this.points = points;
        this.errors = errors;
        this.chiSquared = chiSquared;
        this.freedom = freedom;
    }

    /**
     * Fits ratings.
     *
     * @param players number of players, at least 2
     * @param anchor the player whose rating is 0
     * @param duels the results, with at least two pairs of games each
     * @return the ratings; empty if the duels do not connect all players
     */
    public static Optional<Ratings> fit(int players, int anchor, List<Comparison> duels) {
        if (!connected(players, duels)) {
            return Optional.empty();
        }
        RealMatrix design = design(players, anchor, duels);
        RealVector means = means(duels);
        DecompositionSolver normal =
                new CholeskyDecomposition(design.transpose().multiply(design)).getSolver();
        RealVector beta = normal.solve(design.transpose().operate(means));
        RealMatrix variance = normal.getInverse();
        double misfit = design.operate(beta).subtract(means).getNorm();
        double chiSquared = misfit * misfit;
        int freedom = duels.size() - (players - 1);
        double wider = freedom > 0 ? Math.max(1, Math.sqrt(chiSquared / freedom)) : 1;
        double[] points = new double[players];
        double[] errors = new double[players];
        for (int player = 0; player < players; player++) {
            int column = column(player, anchor);
            points[player] = player == anchor ? 0 : beta.getEntry(column);
            errors[player] = player == anchor ? 0 : wider * Math.sqrt(variance.getEntry(column, column));
        }
        return Optional.of(new Ratings(points, errors, chiSquared, freedom));
    }

    private static boolean connected(int players, List<Comparison> duels) {
        int[] group = new int[players];
        for (int player = 0; player < players; player++) {
            group[player] = player;
        }
        for (Comparison duel : duels) {
            int from = group[duel.a()];
            int to = group[duel.b()];
            for (int player = 0; player < players; player++) {
                group[player] = group[player] == from ? to : group[player];
            }
        }
        for (int player = 1; player < players; player++) {
            if (group[player] != group[0]) {
                return false;
            }
        }
        return true;
    }

    /** Unknowns are the ratings of all players but the anchor, in order. */
    private static int column(int player, int anchor) {
        return player < anchor ? player : player - 1;
    }

    /** Lines of the fit, each divided by its error. */
    private static RealMatrix design(int players, int anchor, List<Comparison> duels) {
        RealMatrix design = new Array2DRowRealMatrix(duels.size(), players - 1);
        for (int d = 0; d < duels.size(); d++) {
            Comparison duel = duels.get(d);
            if (duel.a() != anchor) {
                design.setEntry(d, column(duel.a(), anchor), 1 / duel.error());
            }
            if (duel.b() != anchor) {
                design.setEntry(d, column(duel.b(), anchor), -1 / duel.error());
            }
        }
        return design;
    }

    private static RealVector means(List<Comparison> duels) {
        return new ArrayRealVector(duels.stream()
                .mapToDouble(duel -> duel.points().mean() / duel.error())
                .toArray());
    }

    /**
     * A player's rating.
     *
     * @param player number of the player
     * @return points per game against the anchor
     */
    public double points(int player) {
        return points[player];
    }

    /**
     * Standard error of a player's rating.
     *
     * @param player number of the player
     * @return points per game; 0 for the anchor
     */
    public double error(int player) {
        return errors[player];
    }

    /**
     * How badly the results fail to add up.
     *
     * @return sum of squared residuals, each over its error
     */
    public double chiSquared() {
        return chiSquared;
    }

    /**
     * What chi-squared would be on average if the results added up.
     *
     * @return number of duels less number of ratings fitted, at least 0
     */
    public int freedom() {
        return freedom;
    }

    /**
     * Chance of a chi-squared as large as this, or larger, if the results added up.
     *
     * @return from 0 to 1; 1 if there is nothing left over to judge by
     */
    public double chance() {
        // The anonymous random generator is never used, but would be seeded at a cost.
        return freedom == 0 ? 1 : 1 - new ChiSquaredDistribution(null, freedom).cumulativeProbability(chiSquared);
    }
}
