package org.pipwright.engine.measures;

import org.pipwright.engine.cube.CubeValues;
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
    private final double[][] centredRolling;
    private final double[][] mineRolling;
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
        centredRolling = new double[most + 1][most + 1];
        mineRolling = new double[most + 1][most + 1];
        theirs = new double[most + 1][most + 1];
        for (int sum = 2; sum <= 2 * most; sum++) {
            for (int roller = Math.max(1, sum - most); roller <= Math.min(most, sum - 1); roller++) {
                solve(roller, sum - roller);
            }
        }
    }

    private void solve(int roller, int opponent) {
        for (int pips = 3; pips <= LARGEST_ROLL; pips++) {
            double chance = ways[pips] / 36.0;
            int left = roller - pips;
            boolean over = left <= 0;
            win[roller][opponent] += chance * (over ? 1 : 1 - win[opponent][left]);
            centredRolling[roller][opponent] += chance * (over ? 1 : -best(centredRolling, opponent, left));
            mineRolling[roller][opponent] += chance * (over ? 1 : -theirs[opponent][left]);
            theirs[roller][opponent] += chance * (over ? 1 : -best(mineRolling, opponent, left));
        }
    }

    private double best(double[][] rolling, int roller, int opponent) {
        return Math.max(rolling[roller][opponent], Math.min(1, 2 * theirs[roller][opponent]));
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
     * Values of the actions with the cube in the centre.
     *
     * @param roller pips of the side on roll
     * @param opponent pips of the opponent
     * @return points to the side on roll per unit of the cube
     */
    public CubeValues centred(int roller, int opponent) {
        return values(centredRolling, roller, opponent);
    }

    /**
     * Values of the actions when the side on roll owns the cube.
     *
     * @param roller pips of the side on roll
     * @param opponent pips of the opponent
     * @return points to the side on roll per unit of the cube
     */
    public CubeValues owned(int roller, int opponent) {
        return values(mineRolling, roller, opponent);
    }

    private CubeValues values(double[][] rolling, int roller, int opponent) {
        check(roller, opponent);
        double take = 2 * theirs[roller][opponent];
        return new CubeValues(true, false, rolling[roller][opponent], take, 1, take);
    }
}
