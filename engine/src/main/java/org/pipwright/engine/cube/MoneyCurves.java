package org.pipwright.engine.cube;

/**
 * Cube values in money play by {@link TakePointModel}, in points per unit of the present cube.
 *
 * <p>Each equity is a blend of a dead and a live cube by the efficiency; for owned cubes that is the general model itself,
 * for the centred cube it is the plain blend. The live cube's line runs to the cash point, where it is worth the pass, and
 * from there on to a game won or lost for certain, since playing on for a gammon can be broken off by cashing. Under the
 * Jacoby rule a centred cube counts single games only: all of its dead part, and the live part beyond the cash points.
 */
final class MoneyCurves {
    private final GammonShares shares;
    private final MoneyStakes stakes;
    private final CubeEfficiency efficiency;
    private final TakePointModel live;

    MoneyCurves(GammonShares shares, MoneyStakes stakes, CubeEfficiency efficiency) {
        this.shares = shares;
        this.stakes = stakes;
        this.efficiency = efficiency;
        live = new TakePointModel(shares.winValue(), shares.loseValue(), 1);
    }

    /** The values at a chance to win. */
    CubeValues at(double win, CubeState cube) {
        double taken = 2 * opponentOwns(win);
        boolean mayBeaver = stakes.mayBeaver(cube);
        return new CubeValues(
                stakes.mayDouble(cube), mayBeaver, rolling(win, cube), taken, 1, mayBeaver ? 2 * taken : taken);
    }

    /** The value of rolling with a cube. */
    double rolling(double win, CubeState cube) {
        switch (cube.owner()) {
            case ME:
                return blend(efficiency.owned(win), counted(win), liveOwned(win));
            case THEM:
                return opponentOwns(win);
            default:
                return blend(
                        efficiency.owned(Math.max(win, 1 - win)),
                        stakes.jacoby() ? 2 * win - 1 : counted(win),
                        liveCentred(win));
        }
    }

    private double opponentOwns(double win) {
        return blend(efficiency.owned(1 - win), counted(win), liveOpponentOwns(win));
    }

    private static double blend(double x, double dead, double live) {
        return (1 - x) * dead + x * live;
    }

    /** A dead cube that has been turned: gammons count and nothing else happens. */
    private double counted(double win) {
        return line(win, 0, -shares.loseValue(), 1, shares.winValue());
    }

    private double liveOwned(double win) {
        double cash = live.cashPoint();
        return win <= cash ? live.owned(win) : line(win, cash, 1, 1, shares.winValue());
    }

    private double liveOpponentOwns(double win) {
        double theirCash = live.takePoint();
        return win >= theirCash ? live.opponentOwns(win) : line(win, 0, -shares.loseValue(), theirCash, -1);
    }

    private double liveCentred(double win) {
        double theirCash = live.takePoint();
        double myCash = live.cashPoint();
        if (win < theirCash) {
            return line(win, 0, stakes.jacoby() ? -1 : -shares.loseValue(), theirCash, -1);
        }
        return win <= myCash
                ? live.centredBlend(win)
                : line(win, myCash, 1, 1, stakes.jacoby() ? 1 : shares.winValue());
    }

    private static double line(double at, double from, double fromValue, double to, double toValue) {
        return fromValue + (toValue - fromValue) * (at - from) / (to - from);
    }
}
