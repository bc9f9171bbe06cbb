package org.pipwright.engine.cube;

import org.pipwright.engine.PublicApi;

/**
 * Where doubling and taking are right as the chance to win varies with all else of the position fixed. Chances of the side
 * on roll but for the take point. A bound that does not exist is NaN.
 *
 * @param takePoint least chance to win with which the opponent can take, seen from the opponent; 0 if it takes everything
 * @param from least chance at which doubling is right; NaN if it never is
 * @param to chance above which doubling is wrong again, because the position is too good or the cube dead; 1 if there is none
 */
@PublicApi
public record CubeWindow(double takePoint, double from, double to) {
    private static final int GRID = 500;
    private static final int HALVINGS = 40;

    /** Something that holds at some chances. */
    @FunctionalInterface
    private interface Test {
        boolean holds(CubeValues values);
    }

    /**
     * Finds the window of a position by scanning its curves.
     *
     * @param curves values by chance to win
     * @return the window, bounds to about 1e-9
     */
    public static CubeWindow of(CubeCurves curves) {
        double pass = first(curves, 0, values -> values.doubleTake() > values.doublePass());
        double from = first(curves, 0, CubeValues::shouldDouble);
        double to = Double.isNaN(from) ? Double.NaN : first(curves, from, values -> !values.shouldDouble());
        return new CubeWindow(
                Double.isNaN(pass) ? 0 : 1 - pass, from, !Double.isNaN(from) && Double.isNaN(to) ? 1 : to);
    }

    /** Least chance above a bound at which a test holds, NaN if there is none; certain games are left out. */
    private static double first(CubeCurves curves, double above, Test test) {
        for (int i = (int) (above * GRID) + 1; i < GRID; i++) {
            if (test.holds(curves.at((double) i / GRID))) {
                return i == 1 ? 0 : border(curves, Math.max(above, (i - 1.0) / GRID), (double) i / GRID, test);
            }
        }
        return Double.NaN;
    }

    private static double border(CubeCurves curves, double below, double at, Test test) {
        double low = below;
        double high = at;
        for (int n = 0; n < HALVINGS; n++) {
            double middle = (low + high) / 2;
            if (test.holds(curves.at(middle))) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }
}
