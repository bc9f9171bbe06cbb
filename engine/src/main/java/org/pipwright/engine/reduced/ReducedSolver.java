package org.pipwright.engine.reduced;

import org.pipwright.engine.roll.Roll;

/**
 * Solves a reduced game exactly, without a cube, gammons and backgammons counted: modified policy iteration (Puterman and
 * Shin, Management Science 24:1127-1137, 1978) with Gauss-Seidel sweeps by rising total pip count. A sweep that tries all
 * plays is followed by several cheaper ones that keep the plays it chose.
 */
public final class ReducedSolver {
    /** Most cheap sweeps after one that tries all plays, which costs about five of them. */
    private static final int MAX_KEEPING = 12;

    /** Cheap sweeps stop once they change values by less than this share of what the sweep before them did. */
    private static final double SETTLED = 0.01;

    private ReducedSolver() {}

    /** Told of each sweep. */
    @FunctionalInterface
    public interface Progress {
        /** Says nothing. */
        Progress NONE = (number, allPlays, change) -> {};

        /**
         * A sweep is done.
         *
         * @param number sweeps done
         * @param allPlays whether it tried all plays, rather than the ones chosen before
         * @param change largest change of a value, in points per game
         */
        void sweep(int number, boolean allPlays, double change);
    }

    /**
     * Solves a game. Threads read values that others are writing (asynchronous value iteration: Bertsekas, IEEE
     * Transactions on Automatic Control 27:610-616, 1982), so the last bits depend on timing; the residual is measured
     * afterwards on the values as they stand.
     *
     * @param game the game
     * @param threads threads to use, at least 1
     * @param residual stop when no value differs from that of the best plays by more, in points per game; at least 1e-13
     * @param progress told of each sweep
     * @return values and best plays
     * @throws IllegalArgumentException if the residual is below what double precision allows
     */
    public static ReducedTable solve(ReducedGame game, int threads, double residual, Progress progress) {
        if (!(residual >= 1e-13)) {
            throw new IllegalArgumentException("a residual of " + residual + " is out of reach: ask for 1e-13 or more");
        }
        double[] values = game.freshValues();
        byte[] choices = new byte[game.cells() * Roll.COUNT];
        Bellman bellman = new Bellman(game, values, choices);
        try (Sweeper sweeper = new Sweeper(game.sides(), threads)) {
            for (int sweeps = 1; ; sweeps++) {
                double change = sweeper.ascending(bellman::improve);
                progress.sweep(sweeps, true, change);
                bellman.leaveRaces();
                if (change < residual) {
                    double left = sweeper.ascending(bellman::residual);
                    progress.sweep(++sweeps, true, left);
                    if (left < residual) {
                        return new ReducedTable(game, values, choices, left);
                    }
                }
                double kept = change;
                for (int k = 0; k < MAX_KEEPING && kept > change * SETTLED; k++) {
                    kept = sweeper.ascending(bellman::evaluate);
                    progress.sweep(++sweeps, false, kept);
                }
            }
        }
    }
}
