package org.pipwright.engine.cube;

import java.util.HashMap;
import java.util.Map;

/**
 * The value of a game under a {@link CubeWalk} when both sides use the cube as well as they can. Levels of the cube are
 * solved from the highest that matters downwards; at each the two values of a grid point (one side or the other on roll)
 * are iterated until they stand still. Keeps what it has solved; serves one thread.
 */
public final class WalkGame {
    /** Iteration stops when no value moves by more than this share of the range of values. */
    private static final double STILL = 1e-13;

    private static final int MOST_SWEEPS = 1_000_000;

    private final CubeWalk walk;
    private final Payoffs payoffs;
    private final Map<CubeState, Values> solved = new HashMap<>();
    private final double[] spare;

    /** Values of one state of the cube by grid point, all to "me" and at my chance to win. */
    private static final class Values {
        /** I am on roll and have not decided about the cube. */
        private final double[] mine;
        /** The opponent is on roll and has not decided. */
        private final double[] theirs;
        /** I have decided to roll. */
        private final double[] rolling;
        /** The opponent has decided to roll. */
        private final double[] theirRolling;

        Values(int size) {
            mine = new double[size];
            theirs = new double[size];
            rolling = new double[size];
            theirRolling = new double[size];
        }
    }

    /**
     * A game.
     *
     * @param walk how chances move
     * @param payoffs what endings are worth to one side
     */
    public WalkGame(CubeWalk walk, Payoffs payoffs) {
        this.walk = walk;
        this.payoffs = payoffs;
        spare = new double[walk.cells() + 1];
    }

    /**
     * Value before the cube decision of the side on roll.
     *
     * @param cube the cube as "me" sees it
     * @param onRoll whether I am on roll
     * @param win my chance to win, in [0, 1]
     * @return value to me
     */
    public double value(CubeState cube, boolean onRoll, double win) {
        Values values = solve(cube);
        return walk.at(onRoll ? values.mine : values.theirs, win);
    }

    /**
     * Value once the side on roll has decided to roll without doubling now.
     *
     * @param cube the cube as "me" sees it
     * @param onRoll whether I am on roll
     * @param win my chance to win, in [0, 1]
     * @return value to me
     */
    public double rolling(CubeState cube, boolean onRoll, double win) {
        Values values = solve(cube);
        return walk.at(onRoll ? values.rolling : values.theirRolling, win);
    }

    /**
     * Value to me when I am on roll, double and am taken.
     *
     * @param cube the cube before the double, as I see it
     * @param win my chance to win, in [0, 1]
     * @return value to me
     */
    public double doubleTake(CubeState cube, double win) {
        return walk.at(solve(cube.taken()).rolling, win);
    }

    private Values solve(CubeState cube) {
        Values known = solved.get(cube);
        if (known == null) {
            known = compute(cube);
            solved.put(cube, known);
        }
        return known;
    }

    private Values compute(CubeState cube) {
        int cells = walk.cells();
        double win = payoffs.played(true, cube);
        double lose = payoffs.played(false, cube);
        Values values = new Values(cells + 1);
        for (int i = 0; i <= cells; i++) {
            double dead = lose + (win - lose) * i / cells;
            values.mine[i] = values.theirs[i] = values.rolling[i] = values.theirRolling[i] = dead;
        }
        boolean matters = payoffs.cubeMatters(cube.value());
        double[] myOffer = matters && cube.turnable() ? myOffer(cube) : null;
        double[] theirOffer = matters && cube.swapped().turnable() ? theirOffer(cube) : null;
        if (myOffer != null || theirOffer != null) {
            iterate(values, myOffer, theirOffer, Math.abs(win - lose) * STILL);
        }
        return values;
    }

    /** What my double comes to when the opponent answers it best. */
    private double[] myOffer(CubeState cube) {
        double pass = payoffs.passed(true, cube.value());
        double[] taken = solve(cube.taken()).rolling;
        double[] offer = new double[walk.cells() + 1];
        for (int i = 0; i < offer.length; i++) {
            offer[i] = Math.min(pass, taken[i]);
        }
        return offer;
    }

    /** What the opponent's double comes to when I answer it best. */
    private double[] theirOffer(CubeState cube) {
        double pass = payoffs.passed(false, cube.value());
        double[] taken = solve(new CubeState(2 * cube.value(), CubeOwner.ME)).theirRolling;
        double[] offer = new double[walk.cells() + 1];
        for (int i = 0; i < offer.length; i++) {
            offer[i] = Math.max(pass, taken[i]);
        }
        return offer;
    }

    private void iterate(Values values, double[] myOffer, double[] theirOffer, double still) {
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            walk.average(values.theirs, values.rolling, spare);
            double moved = best(values.rolling, myOffer, values.mine, 1);
            walk.average(values.mine, values.theirRolling, spare);
            moved = Math.max(moved, best(values.theirRolling, theirOffer, values.theirs, -1));
            if (moved <= still) {
                return;
            }
        }
        throw new IllegalStateException("the walk's values do not settle: " + walk);
    }

    /** Writes the better of rolling and offering for one side at each inner grid point; returns the largest change. */
    private static double best(double[] rolling, double[] offer, double[] target, int sign) {
        double moved = 0;
        for (int i = 1; i < target.length - 1; i++) {
            double better = rolling[i];
            if (offer != null && sign * offer[i] > sign * better) {
                better = offer[i];
            }
            moved = Math.max(moved, Math.abs(better - target[i]));
            target[i] = better;
        }
        return moved;
    }
}
