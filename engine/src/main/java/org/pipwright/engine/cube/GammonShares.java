package org.pipwright.engine.cube;

import org.pipwright.engine.evaluation.Outcomes;

/**
 * How wins and losses split into single games, gammons and backgammons, apart from how likely winning is.
 *
 * @param winGammon share of the wins that are gammons, backgammons not counted
 * @param winBackgammon share of the wins that are backgammons
 * @param loseGammon share of the losses that are gammons, backgammons not counted
 * @param loseBackgammon share of the losses that are backgammons
 */
public record GammonShares(double winGammon, double winBackgammon, double loseGammon, double loseBackgammon) {
    /** Every game a single game. */
    public static final GammonShares NONE = new GammonShares(0, 0, 0, 0);

    /** Rounding of chances given as floats. */
    private static final double SLACK = 1e-5;

    /**
     * Checks the shares.
     *
     * @param winGammon in [0, 1]
     * @param winBackgammon in [0, 1 - winGammon]
     * @param loseGammon in [0, 1]
     * @param loseBackgammon in [0, 1 - loseGammon]
     * @throws IllegalArgumentException if one is out of range
     */
    public GammonShares {
        boolean wins = winGammon >= 0 && winBackgammon >= 0 && winGammon + winBackgammon <= 1 + SLACK;
        boolean losses = loseGammon >= 0 && loseBackgammon >= 0 && loseGammon + loseBackgammon <= 1 + SLACK;
        if (!wins || !losses) {
            throw new IllegalArgumentException("shares of gammons and backgammons lie in [0, 1], and so do their sums");
        }
    }

    /**
     * The shares of a position.
     *
     * @param outcomes its six chances
     * @return the shares; those of wins are 0 if there are none, and so with losses
     */
    public static GammonShares of(Outcomes outcomes) {
        double win = outcomes.win();
        // Not 1 - win: six rounded chances need not sum to 1 exactly.
        double lose = outcomes.swapped().win();
        return new GammonShares(
                share(outcomes.winGammon(), win),
                share(outcomes.winBackgammon(), win),
                share(outcomes.loseGammon(), lose),
                share(outcomes.loseBackgammon(), lose));
    }

    /**
     * The shares of a position whose chances are in an array.
     *
     * @param chances array that holds its six chances
     * @param at index of the first of them
     * @return the shares, as {@link #of(Outcomes)} gives them
     */
    public static GammonShares of(float[] chances, int at) {
        double win = (double) chances[at] + chances[at + 1] + chances[at + 2];
        double lose = (double) chances[at + 3] + chances[at + 4] + chances[at + 5];
        return new GammonShares(
                share(chances[at + 1], win),
                share(chances[at + 2], win),
                share(chances[at + 4], lose),
                share(chances[at + 5], lose));
    }

    private static double share(double part, double whole) {
        return whole <= 0 ? 0 : Math.min(1, part / whole);
    }

    /**
     * What a win is worth on average with the cube at 1.
     *
     * @return points, 1 to 3
     */
    public double winValue() {
        return 1 + winGammon + 2 * winBackgammon;
    }

    /**
     * What a loss costs on average with the cube at 1.
     *
     * @return points, 1 to 3
     */
    public double loseValue() {
        return 1 + loseGammon + 2 * loseBackgammon;
    }

    /**
     * The same shares seen from the other side.
     *
     * @return wins and losses exchanged
     */
    public GammonShares swapped() {
        return new GammonShares(loseGammon, loseBackgammon, winGammon, winBackgammon);
    }
}
