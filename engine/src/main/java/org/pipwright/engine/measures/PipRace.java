package org.pipwright.engine.measures;

import org.pipwright.engine.roll.Roll;

/**
 * The race of two bare pip counts: each roll takes its total off (doubles count four dice), and who first has nothing
 * left wins. No pip is wasted and no play chosen, so the game with the cube can be solved exactly, both sides doubling,
 * taking and passing for the most points. The model of N. Zadeh and G. Kobliska, On Optimal Doubling in Backgammon,
 * Management Science 23(8), 1977, with true dice.
 *
 * <p>Equities are for the side on roll, per unit of the present cube, gammons left out. Immutable.
 */
public final class PipRace {
    private static final int LARGEST_ROLL = 24;

    private final int most;
    private final int[] ways = new int[LARGEST_ROLL + 1];
    private final double[][] win;
    private final double[][] centred;
    private final double[][] mine;
    private final double[][] theirs;

    /**
     * Solves all races up to a number of pips.
     *
     * @param most most pips of a side, at least 1
     */
    public PipRace(int most) {
        this.most = most;
        for (Roll roll : Roll.all()) {
            ways[roll.isDouble() ? 4 * roll.high() : roll.high() + roll.low()] += roll.ways();
        }
        win = new double[most + 1][most + 1];
        centred = new double[most + 1][most + 1];
        mine = new double[most + 1][most + 1];
        theirs = new double[most + 1][most + 1];
        for (int sum = 2; sum <= 2 * most; sum++) {
            for (int roller = Math.max(1, sum - most); roller <= Math.min(most, sum - 1); roller++) {
                solve(roller, sum - roller);
            }
        }
    }

    private void solve(int roller, int opponent) {
        Rolled rolled = roll(roller, opponent);
        double doubled = Math.min(1, 2 * rolled.theirs);
        win[roller][opponent] = rolled.win;
        centred[roller][opponent] = Math.max(rolled.centred, doubled);
        mine[roller][opponent] = Math.max(rolled.mine, doubled);
        theirs[roller][opponent] = rolled.theirs;
    }

    /** Means over the 36 throws, without a double before them. */
    private static final class Rolled {
        double win;
        double centred;
        double mine;
        double theirs;
    }

    private Rolled roll(int roller, int opponent) {
        Rolled sum = new Rolled();
        for (int pips = 3; pips <= LARGEST_ROLL; pips++) {
            double chance = ways[pips] / 36.0;
            int left = roller - pips;
            boolean over = left <= 0;
            sum.win += chance * (over ? 1 : 1 - win[opponent][left]);
            sum.centred += chance * (over ? 1 : -centred[opponent][left]);
            sum.mine += chance * (over ? 1 : -theirs[opponent][left]);
            sum.theirs += chance * (over ? 1 : -mine[opponent][left]);
        }
        return sum;
    }

    private void check(int roller, int opponent) {
        if (Math.min(roller, opponent) < 1 || Math.max(roller, opponent) > most) {
            throw new IllegalArgumentException(
                    "pip counts of 1 to " + most + " are solved, not " + roller + " against " + opponent);
        }
    }

    /**
     * Chance of the side on roll to win without a cube.
     *
     * @param roller its pips
     * @param opponent pips of the opponent
     * @return in [0, 1]
     */
    public double win(int roller, int opponent) {
        check(roller, opponent);
        return win[roller][opponent];
    }

    /**
     * Whether to double from the centre.
     *
     * @param roller pips of the side on roll
     * @param opponent pips of the opponent
     * @return true if doubling is at least as good as rolling
     */
    public boolean doubles(int roller, int opponent) {
        check(roller, opponent);
        return Math.min(1, 2 * theirs[roller][opponent]) >= roll(roller, opponent).centred;
    }

    /**
     * Whether to redouble.
     *
     * @param roller pips of the side on roll, which owns the cube
     * @param opponent pips of the opponent
     * @return true if doubling is at least as good as rolling
     */
    public boolean redoubles(int roller, int opponent) {
        check(roller, opponent);
        return Math.min(1, 2 * theirs[roller][opponent]) >= roll(roller, opponent).mine;
    }

    /**
     * Whether the opponent should take a double.
     *
     * @param roller pips of the side on roll
     * @param opponent pips of the opponent
     * @return true if taking costs the opponent at most what passing does
     */
    public boolean takes(int roller, int opponent) {
        check(roller, opponent);
        return 2 * theirs[roller][opponent] <= 1;
    }
}
