package org.pipwright.engine.cube;

/**
 * The value of a game under a {@link CubeWalk} when both sides use the cube as well as they can. Levels of the cube are
 * solved from the highest that matters downwards; at each the two values of a grid point (one side or the other on roll)
 * are iterated until they stand still. Keeps what it has solved; serves one thread.
 */
public final class WalkGame {
    /** Iteration stops when no value moves by more than this share of the range of values. */
    private static final double STILL = 1e-13;

    private static final int MAX_SWEEPS = 1_000_000;

    /** Sweeps between two leaps, so that one mode of the error is left to be seen. */
    private static final int PATIENCE = 8;

    private static final int OWNERS = CubeOwner.values().length;

    private final CubeWalk walk;
    private final Payoffs payoffs;
    /** By the cube's power of two and owner. */
    private final Values[] solved = new Values[OWNERS * (1 + Integer.numberOfTrailingZeros(CubeState.HIGHEST))];

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
        int index = OWNERS * Integer.numberOfTrailingZeros(cube.value())
                + cube.owner().ordinal();
        if (solved[index] == null) {
            solved[index] = compute(cube);
        }
        return solved[index];
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

    /**
     * Sweeps until the values stand still. After some sweeps what is left of the error shrinks by the same factor each
     * time; a leap by the sum of that geometric series (Aitken 1926) saves most of the sweeps. It moves the start of the
     * sweeps that follow and nothing else, so the end is the same.
     */
    private void iterate(Values values, double[] myOffer, double[] theirOffer, double still) {
        double before = 0;
        for (int sweep = 1; sweep < MAX_SWEEPS; sweep++) {
            boolean leap = sweep % PATIENCE == 0;
            double[] mine = leap ? values.mine.clone() : null;
            walk.average(values.theirs, values.rolling, spare);
            double moved = best(values.rolling, myOffer, values.mine, 1);
            walk.average(values.mine, values.theirRolling, spare);
            double theirMoved = best(values.theirRolling, theirOffer, values.theirs, -1);
            if (Math.max(moved, theirMoved) <= still) {
                return;
            }
            if (leap && moved < before) {
                leap(mine, values.mine, moved / before);
                walk.average(values.mine, values.theirRolling, spare);
                best(values.theirRolling, theirOffer, values.theirs, -1);
            }
            before = moved;
        }
        throw new IllegalStateException("the walk's values do not settle: " + walk);
    }

    private static void leap(double[] from, double[] to, double factor) {
        for (int i = 0; i < to.length; i++) {
            to[i] += (to[i] - from[i]) * factor / (1 - factor);
        }
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
