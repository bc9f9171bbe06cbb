package org.pipwright.engine.reduced;

import org.pipwright.engine.position.Position;

/** The exact cubeless equities of a reduced game under best play of both sides. Immutable. */
public final class ReducedTable {
    private final ReducedGame game;
    private final double[] values;
    private final double residual;

    ReducedTable(ReducedGame game, double[] values, double residual) {
        this.game = game;
        this.values = values;
        this.residual = residual;
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
     * How far any equity is from that of the best plays.
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
}
