package org.pipwright.engine.cube;

/**
 * Rick Janowski's general model of take points in money games ("Take-points in money games", 1993): equities with the
 * cube are straight lines in the chance to win, between a cube without further use (efficiency 0) and one used at the
 * perfect moment (efficiency 1; Keeler and Spencer, Operations Research 23, 1975). The printed take point is
 * (2L - 1) / (2W + 2L + x), which is (L - 1/2) / S with S = W + L + x/2; the other formulas are from memory and agree with
 * the limits x = 0 and x = 1. All points are chances to win, all equities points per unit of the present cube.
 *
 * @param winValue W, average worth of a win with the cube at 1, 1 to 3 points
 * @param loseValue L, average cost of a loss, 1 to 3 points
 * @param efficiency x, 0 (dead cube) to 1 (live cube)
 */
public record TakePointModel(double winValue, double loseValue, double efficiency) {
    /**
     * Checks the arguments.
     *
     * @param winValue W, 1 to 3
     * @param loseValue L, 1 to 3
     * @param efficiency x, 0 to 1
     * @throws IllegalArgumentException if one is out of range
     */
    public TakePointModel {
        if (!(winValue >= 1 && winValue <= 3 && loseValue >= 1 && loseValue <= 3)) {
            throw new IllegalArgumentException(
                    "a win and a loss are worth 1 to 3 points, not " + winValue + " and " + loseValue);
        }
        if (!(efficiency >= 0 && efficiency <= 1)) {
            throw new IllegalArgumentException("cube efficiency lies in [0, 1], not " + efficiency);
        }
    }

    private double spread() {
        return winValue + loseValue + efficiency / 2;
    }

    /**
     * Least chance to win with which a double can be taken, for the side that is doubled.
     *
     * @return chance of that side, whose wins are worth W and losses L
     */
    public double takePoint() {
        return (loseValue - 0.5) / spread();
    }

    /**
     * Chance to win above which the opponent has to pass a double.
     *
     * @return chance of the side that doubles
     */
    public double cashPoint() {
        return (loseValue + 0.5 + efficiency / 2) / spread();
    }

    /**
     * Chance to win from which the owner of the cube should redouble.
     *
     * @return chance of the owner
     */
    public double redoublePoint() {
        return (loseValue + efficiency) / spread();
    }

    /**
     * Chance to win from which to double with the cube in the centre: where doubling equals {@link #centredGeneral}.
     *
     * @return chance of the side that doubles
     */
    public double initialDoublePoint() {
        // 2 (pS - L - x/2) = k (pS - L - x/4) with k = 4 / (4 - x), solved for p.
        double x = efficiency;
        double k = 4 / (4 - x);
        return (2 * (loseValue + x / 2) - k * (loseValue + x / 4)) / ((2 - k) * spread());
    }

    /**
     * Equity of the side that owns the cube, below its cash point.
     *
     * @param win its chance to win
     * @return points per unit of the cube
     */
    public double owned(double win) {
        return win * spread() - loseValue;
    }

    /**
     * Equity of a side whose opponent owns the cube, above the opponent's cash point.
     *
     * @param win its chance to win
     * @return points per unit of the cube
     */
    public double opponentOwns(double win) {
        return win * spread() - loseValue - efficiency / 2;
    }

    /**
     * Equity with the cube in the centre, between both cash points, in the form of the general model.
     *
     * @param win chance to win
     * @return points per unit of the cube
     */
    public double centredGeneral(double win) {
        return 4 / (4 - efficiency) * (win * spread() - loseValue - efficiency / 4);
    }

    /**
     * Equity with the cube in the centre, between both cash points, as a plain blend of the dead and the live cube. It
     * equals {@link #centredGeneral} at x = 0 and 1 and lies a little further from 0 in between.
     *
     * @param win chance to win
     * @return points per unit of the cube
     */
    public double centredBlend(double win) {
        double dead = win * (winValue + loseValue) - loseValue;
        double live = 4.0 / 3 * (win * (winValue + loseValue + 0.5) - loseValue - 0.25);
        return (1 - efficiency) * dead + efficiency * live;
    }
}
