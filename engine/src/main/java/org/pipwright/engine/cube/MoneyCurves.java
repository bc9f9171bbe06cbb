package org.pipwright.engine.cube;

/**
 * Cube values in money play by {@link TakePointModel}, in points per unit of the present cube.
 *
 * <p>Between the opponent's and the own cash point equities are the model's lines, with the plain blend for the centred
 * cube. Beyond a cash point the side that could cash plays on at worst, so the line goes on to what the game is worth when
 * it is won or lost for certain. Under the Jacoby rule the dead part of a centred cube counts single games only; its live
 * part is turned before the game ends and counts all.
 */
final class MoneyCurves implements CubeCurves {
    private final GammonShares shares;
    private final CubeState cube;
    private final MoneyStakes stakes;
    private final TakePointModel model;

    MoneyCurves(GammonShares shares, CubeState cube, MoneyStakes stakes, double efficiency) {
        this.shares = shares;
        this.cube = cube;
        this.stakes = stakes;
        model = new TakePointModel(shares.winValue(), shares.loseValue(), efficiency);
    }

    @Override
    public CubeValues at(double win) {
        double taken = 2 * opponentOwns(win);
        boolean mayBeaver = stakes.mayBeaver(cube);
        return new CubeValues(
                stakes.mayDouble(cube), mayBeaver, noDouble(win), taken, 1, mayBeaver ? 2 * taken : taken);
    }

    private double noDouble(double win) {
        switch (cube.owner()) {
            case ME:
                return owned(win);
            case THEM:
                return opponentOwns(win);
            default:
                return centred(win);
        }
    }

    private double owned(double win) {
        double cash = model.cashPoint();
        return win <= cash ? model.owned(win) : line(win, cash, model.owned(cash), 1, shares.winValue());
    }

    private double opponentOwns(double win) {
        double cash = model.takePoint();
        return win >= cash ? model.opponentOwns(win) : line(win, 0, -shares.loseValue(), cash, model.opponentOwns(cash));
    }

    private double centred(double win) {
        double x = model.efficiency();
        return (1 - x) * dead(win) + x * live(win);
    }

    private double dead(double win) {
        return stakes.jacoby() ? 2 * win - 1 : win * (shares.winValue() + shares.loseValue()) - shares.loseValue();
    }

    /** The live centred cube; its cash points are those of efficiency 1. */
    private double live(double win) {
        TakePointModel perfect = new TakePointModel(shares.winValue(), shares.loseValue(), 1);
        double theirCash = perfect.takePoint();
        double myCash = perfect.cashPoint();
        if (win < theirCash) {
            return line(win, 0, stakes.jacoby() ? -1 : -shares.loseValue(), theirCash, -1);
        }
        return win <= myCash
                ? perfect.centredBlend(win)
                : line(win, myCash, 1, 1, stakes.jacoby() ? 1 : shares.winValue());
    }

    private static double line(double at, double from, double fromValue, double to, double toValue) {
        return to == from ? toValue : fromValue + (toValue - fromValue) * (at - from) / (to - from);
    }
}
