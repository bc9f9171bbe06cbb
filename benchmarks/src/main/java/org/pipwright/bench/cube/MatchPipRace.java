package org.pipwright.bench.cube;

import java.util.HashMap;
import java.util.Map;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.matchtable.MatchPayoffs;
import org.pipwright.engine.roll.Roll;

/**
 * The race of two bare pip counts, as in {@link org.pipwright.engine.measures.PipRace}, for a match: each roll takes its
 * total off, no pip is wasted, and both sides double, take and pass for the match at every cube that can still arise.
 * Values are chances of one side, "me", to win the match, exact as far as the match table is.
 */
final class MatchPipRace {
    private static final int LARGEST_ROLL = 24;

    private final int most;
    private final MatchPayoffs payoffs;
    private final int[] ways = new int[LARGEST_ROLL + 1];
    private final Map<CubeState, double[][][]> solved = new HashMap<>();
    private final double[][][] game;

    /** Races of up to so many pips a side. */
    MatchPipRace(int most, MatchPayoffs payoffs) {
        this.most = most;
        this.payoffs = payoffs;
        for (Roll roll : Roll.all()) {
            ways[roll.isDouble() ? 4 * roll.high() : roll.high() + roll.low()] += roll.ways();
        }
        game = fill(1, 0, null, null, 0, 0);
    }

    /** My chance to win the game, I being on roll. */
    double win(int mine, int theirs) {
        return game[0][mine][theirs];
    }

    /** What rolling is worth to me, I being on roll, with a cube seen from me. */
    double rolling(int mine, int theirs, CubeState cube) {
        return payoffs.cubeMatters(cube.value())
                ? solve(cube)[0][mine][theirs]
                : payoffs.dead(cube, game[0][mine][theirs]);
    }

    /** What my opponent's rolling is worth to me. */
    private double theirRolling(int mine, int theirs, CubeState cube) {
        return payoffs.cubeMatters(cube.value())
                ? solve(cube)[1][mine][theirs]
                : payoffs.dead(cube, game[1][mine][theirs]);
    }

    private double[][][] solve(CubeState cube) {
        double[][][] known = solved.get(cube);
        if (known == null) {
            Offer mine = cube.turnable() ? (x, y) -> rolling(x, y, cube.taken()) : null;
            CubeState after = new CubeState(2 * cube.value(), CubeOwner.ME);
            Offer theirs = cube.swapped().turnable() ? (x, y) -> theirRolling(x, y, after) : null;
            known = fill(
                    payoffs.played(true, cube),
                    payoffs.played(false, cube),
                    mine,
                    theirs,
                    payoffs.passed(true, cube.value()),
                    payoffs.passed(false, cube.value()));
            solved.put(cube, known);
        }
        return known;
    }

    /** What a double that is taken leaves me. */
    private interface Offer {
        double taken(int mine, int theirs);
    }

    /** Values of my rolling and of my opponent's rolling. */
    private double[][][] fill(double won, double lost, Offer mine, Offer theirs, double passed, double passing) {
        double[][][] rolling = new double[2][most + 1][most + 1];
        for (int sum = 2; sum <= 2 * most; sum++) {
            for (int x = Math.max(1, sum - most); x <= Math.min(most, sum - 1); x++) {
                int y = sum - x;
                for (int pips = 3; pips <= LARGEST_ROLL; pips++) {
                    double chance = ways[pips] / 36.0;
                    if (chance > 0) {
                        rolling[0][x][y] +=
                                chance * (pips >= x ? won : afterMine(rolling[1], x - pips, y, theirs, passing));
                        rolling[1][x][y] +=
                                chance * (pips >= y ? lost : afterTheirs(rolling[0], x, y - pips, mine, passed));
                    }
                }
            }
        }
        return rolling;
    }

    /** My opponent is on roll and may double. */
    private static double afterMine(double[][] rolling, int x, int y, Offer theirs, double passing) {
        double roll = rolling[x][y];
        return theirs == null ? roll : Math.min(roll, Math.max(passing, theirs.taken(x, y)));
    }

    /** I am on roll and may double. */
    private static double afterTheirs(double[][] rolling, int x, int y, Offer mine, double passed) {
        double roll = rolling[x][y];
        return mine == null ? roll : Math.max(roll, Math.min(passed, mine.taken(x, y)));
    }
}
