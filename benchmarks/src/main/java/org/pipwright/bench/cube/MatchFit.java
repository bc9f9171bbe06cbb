package org.pipwright.bench.cube;

import java.util.Locale;
import org.apache.commons.math3.stat.regression.MillerUpdatingRegression;
import org.apache.commons.math3.stat.regression.RegressionResults;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.matchtable.CubeUse;

/**
 * Least-squares fit of the two numbers of the efficiency of owned cubes at match scores, as shares of what the walk makes of
 * them; scores weigh alike, by what a point is worth. Owners whose opponents win the match anyway with the cube as it is are
 * left out, and so are chances outside 10 to 90 %.
 */
final class MatchFit {
    private final MillerUpdatingRegression fit = new MillerUpdatingRegression(2, false);
    private int count;

    void add(MatchKnown known) {
        double[] none = known.model(with(known, 0, 0));
        double[] behind = known.model(with(known, 1, 0));
        double[] ahead = known.model(with(known, 0, 1));
        for (int k = 1; k < none.length; k++) {
            CubeState cube = MatchKnown.CUBES.get(k);
            double point = (known.payoffs().played(true, cube) - known.payoffs().played(false, cube)) / 4;
            double[] gains = {(behind[k] - none[k]) / point, (ahead[k] - none[k]) / point};
            if (gains[0] != 0 || gains[1] != 0) {
                fit.addObservation(gains, (known.truth()[k] - none[k]) / point);
                count++;
            }
        }
    }

    private static CubeUse with(MatchKnown known, double behind, double ahead) {
        return new CubeUse(known.use().walk(), new CubeEfficiency(behind, ahead));
    }

    boolean empty() {
        return count < 10;
    }

    /** The best fit, cut to [0, 1]. */
    CubeEfficiency best() {
        double[] best = fit.regress().getParameterEstimates();
        return new CubeEfficiency(Math.min(1, Math.max(0, best[0])), Math.min(1, Math.max(0, best[1])));
    }

    @Override
    public String toString() {
        RegressionResults results = fit.regress();
        double[] best = results.getParameterEstimates();
        double[] errors = results.getStdErrorOfEstimates();
        return String.format(
                Locale.ROOT, "behind %.2f +- %.2f  ahead %.2f +- %.2f", best[0], errors[0], best[1], errors[1]);
    }

    /** How far a model is from known values: sums over positions, in points of a hundred of the chance to win the match. */
    static final class Errors {
        private final double[] squares = new double[MatchKnown.CUBES.size()];
        private final double[] sums = new double[squares.length];
        private final double[] noise = new double[squares.length];
        private double doubling;
        private double taking;
        private int wrongDoubles;
        private int wrongTakes;
        private int count;

        void add(MatchKnown known, CubeUse use) {
            double[] model = known.model(use);
            for (int k = 0; k < model.length; k++) {
                double error = 100 * (model[k] - known.truth()[k]);
                squares[k] += error * error;
                sums[k] += error;
                noise[k] += Math.pow(100 * known.errors()[k], 2);
            }
            CubeValues truth = known.values(known.truth());
            CubeValues guess = known.values(model);
            double cost = -100 * truth.cost(guess.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL);
            double answer = -100 * truth.cost(guess.answer());
            doubling += cost;
            taking += answer;
            double clear = 200 * Math.hypot(known.errors()[0], known.errors()[1]);
            wrongDoubles += cost > clear + NEGLIGIBLE ? 1 : 0;
            wrongTakes += answer > 200 * known.errors()[1] + NEGLIGIBLE ? 1 : 0;
            count++;
        }

        /** Root mean square of the errors with a cube, less what the noise of the truth adds to it. */
        private double rms(int k) {
            return Math.sqrt(Math.max(0, squares[k] - noise[k]) / count);
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "n %5d  rms centred %.2f opponent's %.2f owned %.2f  mean error %+.2f %+.2f %+.2f (+- %.2f)"
                            + "  lost a doubling decision %.4f, a take %.4f; clearly wrong %d, %d",
                    count,
                    rms(0),
                    rms(1),
                    rms(2),
                    sums[0] / count,
                    sums[1] / count,
                    sums[2] / count,
                    Math.sqrt(noise[0] + noise[1] + noise[2]) / Math.sqrt(3) / count,
                    doubling / count,
                    taking / count,
                    wrongDoubles,
                    wrongTakes);
        }

        /** Smaller costs are no errors, in points of a hundred. */
        private static final double NEGLIGIBLE = 0.01;
    }
}
