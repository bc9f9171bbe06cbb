package org.pipwright.bench.cube;

import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.roll.Roll;

/**
 * The race in which each side has only a count of pips, every roll takes its full total off and nobody wastes any: the
 * model of Zadeh and Kobliska (Management Science 23, 1977), solved exactly with the cube by going back from the end. Money
 * without gammons; values to the side on roll before its roll, per unit of the cube.
 */
final class PipRace {
    private final int most;
    private final double[][] win;
    private final double[][] centred;
    private final double[][] mine;
    private final double[][] theirs;
    private final double[][] centredRolling;
    private final double[][] mineRolling;

    /** Solves all pairs of counts from 1 to a largest one. */
    PipRace(int most) {
        this.most = most;
        win = new double[most + 1][most + 1];
        centred = new double[most + 1][most + 1];
        mine = new double[most + 1][most + 1];
        theirs = new double[most + 1][most + 1];
        centredRolling = new double[most + 1][most + 1];
        mineRolling = new double[most + 1][most + 1];
        for (int sum = 2; sum <= 2 * most; sum++) {
            for (int x = Math.max(1, sum - most); x <= Math.min(most, sum - 1); x++) {
                solve(x, sum - x);
            }
        }
    }

    private void solve(int x, int y) {
        for (Roll roll : Roll.all()) {
            int left = x - (roll.isDouble() ? 4 * roll.high() : roll.high() + roll.low());
            boolean over = left <= 0;
            double p = roll.probability();
            win[x][y] += p * (over ? 1 : 1 - win[y][left]);
            centredRolling[x][y] += p * (over ? 1 : -centred[y][left]);
            mineRolling[x][y] += p * (over ? 1 : -theirs[y][left]);
            theirs[x][y] += p * (over ? 1 : -mine[y][left]);
        }
        centred[x][y] = centred(x, y).best();
        mine[x][y] = owned(x, y).best();
    }

    /** Chance to win of the side on roll with x pips against y. */
    double win(int x, int y) {
        return win[x][y];
    }

    /** Largest count solved. */
    int most() {
        return most;
    }

    /** Cube actions with the cube in the centre. */
    CubeValues centred(int x, int y) {
        return values(centredRolling[x][y], x, y);
    }

    /** Cube actions with the cube on the side of the side on roll. */
    CubeValues owned(int x, int y) {
        return values(mineRolling[x][y], x, y);
    }

    private CubeValues values(double rolling, int x, int y) {
        double take = 2 * theirs[x][y];
        return new CubeValues(true, false, rolling, take, 1, take);
    }
}
