package org.pipwright.engine.reduced;

import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeValues;

/**
 * A reduced game solved exactly with the cube, for money: gammons and backgammons count at any cube (no Jacoby rule), there
 * are no beavers, and the cube may be turned without end. Both sides play, double, take and pass for the most points.
 * Values are points per unit of the present cube. Immutable.
 */
public final class ReducedCube {
    private final ReducedGame game;
    private final double[][] values;

    private ReducedCube(ReducedGame game, double[][] values) {
        this.game = game;
        this.values = values;
    }

    /**
     * Solves a game by value iteration, by rising pip count as {@link ReducedSolver} does it.
     *
     * @param game the game
     * @param threads threads to use, at least 1
     * @param change stop when a sweep changes no value by more, in points per unit of the cube; at least 1e-13
     * @param progress told of each sweep
     * @return the values
     * @throws IllegalArgumentException if so small a change is below what double precision allows
     */
    public static ReducedCube solve(ReducedGame game, int threads, double change, ReducedSolver.Progress progress) {
        if (!(change >= 1e-13)) {
            throw new IllegalArgumentException("a change of " + change + " is out of reach: ask for 1e-13 or more");
        }
        double[][] values = {game.freshValues(), game.freshValues(), game.freshValues()};
        CubeBellman bellman = new CubeBellman(game, values);
        try (Sweeper sweeper = new Sweeper(game.sides(), threads)) {
            double last = Double.POSITIVE_INFINITY;
            for (int sweeps = 1; last > change; sweeps++) {
                last = sweeper.ascending(bellman);
                progress.sweep(sweeps, true, last);
                bellman.leaveRaces();
            }
        }
        return new ReducedCube(game, values);
    }

    /**
     * The game that is solved.
     *
     * @return the game
     */
    public ReducedGame game() {
        return game;
    }

    /**
     * The values of the cube actions.
     *
     * @param cell an unfinished position of the game
     * @param owner who owns the cube, seen from the side on roll
     * @return values to the side on roll, which may not double if the opponent owns the cube
     */
    public CubeValues values(int cell, CubeOwner owner) {
        double[] rolling = new double[CubeBellman.STATES];
        new CubeBellman(game, values).rolling(cell, rolling);
        double roll = rolling[CubeBellman.state(owner)];
        double take = CubeBellman.taken(rolling);
        boolean mayDouble = owner != CubeOwner.THEM;
        return new CubeValues(mayDouble, false, roll, mayDouble ? take : roll, 1, mayDouble ? take : roll);
    }
}
