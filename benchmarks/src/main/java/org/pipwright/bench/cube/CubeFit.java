package org.pipwright.bench.cube;

import java.util.Locale;
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

    private final MillerUpdatingRegression fit = new MillerUpdatingRegression(2, false);

    /**
     * A position with its true values.
     *
     * @param shares how its wins and losses split
     * @param win its chance to win
     * @param centred values with the cube in the centre
     * @param owned values with the cube owned by the side on roll
     */
    record Known(GammonShares shares, double win, CubeValues centred, CubeValues owned) {
        double[] truth() {
            return equities(centred, owned);
        }

        /** The three equities a model gives: rolling with a centred cube, with an owned one, with the opponent's. */
        double[] model(CubeEfficiency efficiency) {
            return equities(values(efficiency, CubeState.START), values(efficiency, OWNED));
        }

        private CubeValues values(CubeEfficiency efficiency, CubeState cube) {
            return new MoneyModel(STAKES, efficiency).curves(shares, cube).at(win);
        }
    }

    private static double[] equities(CubeValues centred, CubeValues owned) {
        return new double[] {centred.noDouble(), owned.noDouble(), owned.doubleTake() / 2};
    }

    static boolean counts(double win) {
        return win >= MIN && win <= 1 - MIN;
    }

    /** Adds a position. */
    void add(Known known) {
        double[] truth = known.truth();
        double[] dead = known.model(CubeEfficiency.constant(0));
        double[][] gains = {known.model(new CubeEfficiency(1, 0)), known.model(new CubeEfficiency(0, 1))};
        for (int k = 0; k < truth.length; k++) {
            fit.addObservation(new double[] {gains[0][k] - dead[k], gains[1][k] - dead[k]}, truth[k] - dead[k]);
        }
    }

    /** The best fit, cut to [0, 1]. */
    CubeEfficiency best() {
        double[] best = fit.regress().getParameterEstimates();
        return new CubeEfficiency(Math.min(1, Math.max(0, best[0])), Math.min(1, Math.max(0, best[1])));
    }

    static String name(CubeEfficiency efficiency) {
        return String.format(Locale.ROOT, "behind %.2f  ahead %.2f", efficiency.behind(), efficiency.ahead());
    }

    /** How far a model is from known values: sums over positions. */
    static final class Errors {
        private final double[] squares = new double[3];
        private double doubling;
        private double taking;
        private int count;

        void add(Known known, CubeEfficiency efficiency) {
            double[] truth = known.truth();
            double[] guess = known.model(efficiency);
            for (int k = 0; k < truth.length; k++) {
                squares[k] += (guess[k] - truth[k]) * (guess[k] - truth[k]);
            }
            CubeValues first = known.values(efficiency, CubeState.START);
            CubeValues again = known.values(efficiency, OWNED);
            doubling += (cost(known.centred, first) + cost(known.owned, again)) / 2;
            taking -= known.centred.cost(first.answer());
            count++;
        }

        /** Sum of all squared errors. */
        double squares() {
            return squares[0] + squares[1] + squares[2];
        }

        private static double cost(CubeValues truth, CubeValues guess) {
            return -truth.cost(guess.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL);
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "n %6d  rms centred %.4f owned %.4f opponent's %.4f  mean cost of doubling decisions %.5f, of takes"
                            + " %.5f",
                    count,
                    Math.sqrt(squares[0] / count),
                    Math.sqrt(squares[1] / count),
                    Math.sqrt(squares[2] / count),
                    doubling / count,
                    taking / count);
        }
    }
}
