package org.pipwright.bench.cube;

import org.apache.commons.math3.stat.regression.MillerUpdatingRegression;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MoneyModel;
import org.pipwright.engine.cube.MoneyStakes;

/**
 * Least-squares fit of the two numbers of a {@link CubeEfficiency} to positions whose values are known. The model is linear
 * in them. Positions with a chance outside 10 to 90 % are left out.
 */
final class CubeFit {
    private static final double MIN = 0.1;
    private static final MoneyStakes STAKES = new MoneyStakes(false, false);
    private static final CubeState OWNED = new CubeState(2, CubeOwner.ME);

    private final GammonShares shares;
    private final MillerUpdatingRegression fit = new MillerUpdatingRegression(2, false);

    CubeFit(GammonShares shares) {
        this.shares = shares;
    }

    /** The three equities a model gives: rolling with a centred cube, with an owned one, with the opponent's. */
    private double[] equities(double win, CubeEfficiency efficiency) {
        MoneyModel model = new MoneyModel(STAKES, efficiency);
        CubeValues owned = model.curves(shares, OWNED).at(win);
        double centred = model.curves(shares, CubeState.START).at(win).noDouble();
        return new double[] {centred, owned.noDouble(), owned.doubleTake() / 2};
    }

    private static double[] equities(CubeValues centred, CubeValues owned) {
        return new double[] {centred.noDouble(), owned.noDouble(), owned.doubleTake() / 2};
    }

    static boolean counts(double win) {
        return win >= MIN && win <= 1 - MIN;
    }

    /** Adds a position with its true values. */
    void add(double win, CubeValues centred, CubeValues owned) {
        double[] truth = equities(centred, owned);
        double[] dead = equities(win, CubeEfficiency.constant(0));
        double[][] gains = {equities(win, new CubeEfficiency(1, 0)), equities(win, new CubeEfficiency(0, 1))};
        for (int k = 0; k < truth.length; k++) {
            fit.addObservation(new double[] {gains[0][k] - dead[k], gains[1][k] - dead[k]}, truth[k] - dead[k]);
        }
    }

    /** The best fit, cut to [0, 1]. */
    CubeEfficiency best() {
        double[] best = fit.regress().getParameterEstimates();
        return new CubeEfficiency(Math.min(1, Math.max(0, best[0])), Math.min(1, Math.max(0, best[1])));
    }

    /** How far a model is from known values: sums over positions. */
    final class Errors {
        private final CubeEfficiency efficiency;
        private final double[] squares = new double[3];
        private double doubling;
        private double taking;
        private int count;

        Errors(CubeEfficiency efficiency) {
            this.efficiency = efficiency;
        }

        void add(double win, CubeValues centred, CubeValues owned) {
            double[] truth = equities(centred, owned);
            double[] guess = equities(win, efficiency);
            for (int k = 0; k < truth.length; k++) {
                squares[k] += (guess[k] - truth[k]) * (guess[k] - truth[k]);
            }
            MoneyModel model = new MoneyModel(STAKES, efficiency);
            CubeValues first = model.curves(shares, CubeState.START).at(win);
            CubeValues again = model.curves(shares, OWNED).at(win);
            doubling += (cost(centred, first) + cost(owned, again)) / 2;
            taking -= centred.cost(first.answer());
            count++;
        }

        /** Sum of all squared errors. */
        double squares() {
            return squares[0] + squares[1] + squares[2];
        }

        private double cost(CubeValues truth, CubeValues guess) {
            return -truth.cost(guess.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL);
        }

        @Override
        public String toString() {
            return String.format(
                    java.util.Locale.ROOT,
                    "n %6d  behind %.2f  ahead %.2f  rms centred %.4f owned %.4f opponent's %.4f  mean cost of doubling"
                            + " decisions %.5f, of takes %.5f",
                    count,
                    efficiency.behind(),
                    efficiency.ahead(),
                    Math.sqrt(squares[0] / count),
                    Math.sqrt(squares[1] / count),
                    Math.sqrt(squares[2] / count),
                    doubling / count,
                    taking / count);
        }
    }
}
