package org.pipwright.engine.reduced;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The exact cubeless equities of a reduced game under best play of both sides, and the best plays. Immutable. */
public final class ReducedTable {
    private final ReducedGame game;
    private final double[] values;
    private final byte[] choices;
    private final double residual;

    /** Arrays are kept, not copied. */
    ReducedTable(ReducedGame game, double[] values, byte[] choices, double residual) {
        this.game = game;
        this.values = values;
        this.choices = choices;
        this.residual = residual;
    }

    /** A table from values alone: finds the best plays and measures the residual. */
    static ReducedTable of(ReducedGame game, double[] values, int threads) {
        byte[] choices = new byte[game.cells() * Roll.COUNT];
        Bellman bellman = new Bellman(game, values, choices);
        try (Sweeper sweeper = new Sweeper(game.sides(), threads)) {
            return new ReducedTable(game, values, choices, sweeper.ascending(bellman::residual));
        }
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
     * How far any equity is from that of the best plays, at most.
     *
     * @return points per game
     */
    public double residual() {
        return residual;
    }

    /**
     * Exact equity of a position before the roll.
     *
     * @param position a position of the game, finished or not
     * @return points per game for the side on roll
     */
    public double equity(Position position) {
        return values[game.cell(position)];
    }

    /**
     * Exact equity after a play.
     *
     * @param results array that holds the result of a roll, the side that played first, finished or not
     * @param at index of its first plane
     * @return points per game for the side that played
     */
    public double equityAfter(int[] results, int at) {
        Sides sides = game.sides();
        return -values[game.cell(sides.index(results, at + Planes.SIDE), sides.index(results, at))];
    }

    double[] values() {
        return values;
    }

    byte[] choices() {
        return choices;
    }
}
