package org.pipwright.engine.reduced;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * The game with one to three checkers a side and the index of its positions: a position's cell is the arrangement of the
 * side on roll times the number of arrangements plus that of the opponent. Some cells are empty, where both sides would
 * hold one point. Immutable; shared by threads.
 */
public final class ReducedGame {
    private final Sides sides;
    private final PlayLists lists;

    /**
     * A game.
     *
     * @param checkers checkers a side, 1 to 3
     * @throws IllegalArgumentException if there are more
     */
    public ReducedGame(int checkers) {
        sides = new Sides(checkers);
        lists = new PlayLists(sides);
    }

    Sides sides() {
        return sides;
    }

    PlayLists lists() {
        return lists;
    }

    /**
     * Checkers a side.
     *
     * @return 1 to 3
     */
    public int checkers() {
        return sides.checkers();
    }

    /**
     * Number of cells, empty ones included.
     *
     * @return the square of the number of one side's arrangements: 676, 123,201 or 10,732,176
     */
    public int cells() {
        return sides.size() * sides.size();
    }

    /**
     * Cell of a position.
     *
     * @param position a position of this game
     * @return 0 to cells() - 1
     * @throws IllegalArgumentException if it has another number of checkers
     */
    public int cell(Position position) {
        if (position.checkers() != checkers()) {
            throw new IllegalArgumentException("a position with " + position.checkers()
                    + " checkers a side is not one of the game with " + checkers());
        }
        return cell(position.toPlanes(), 0);
    }

    /**
     * Cell of a position given by its planes.
     *
     * @param planes array that holds the position, as {@link Planes} describes; it must have this game's checkers
     * @param at index of its first plane
     * @return 0 to cells() - 1
     */
    public int cell(int[] planes, int at) {
        return cell(sides.index(planes, at), sides.index(planes, at + Planes.SIDE));
    }

    int cell(int me, int opponent) {
        return me * sides.size() + opponent;
    }

    /**
     * Writes the planes of a cell's position.
     *
     * @param cell a cell that is not empty
     * @param planes array to write to
     * @param at index of the first of {@value Planes#STRIDE} ints
     */
    public void copyPlanes(int cell, int[] planes, int at) {
        sides.copyPlanes(cell / sides.size(), planes, at);
        sides.copyPlanes(cell % sides.size(), planes, at + Planes.SIDE);
    }

    /**
     * Whether a cell holds an unfinished position.
     *
     * @param cell 0 to cells() - 1
     * @return false for empty cells and finished games
     */
    public boolean unfinished(int cell) {
        return playable(cell / sides.size(), cell % sides.size());
    }

    /** Whether two arrangements make an unfinished position. */
    boolean playable(int me, int opponent) {
        return me != 0 && opponent != 0 && !shared(me, opponent);
    }

    private boolean shared(int me, int opponent) {
        return (sides.occupied(me) & Planes.mirror(sides.occupied(opponent)) & Planes.POINTS) != 0;
    }

    boolean contact(int me, int opponent) {
        return sides.rearmost(me) + sides.rearmost(opponent) > Planes.BAR;
    }

    /** Fresh values for the side on roll: results where the game is finished, not-a-number where empty, else 0. */
    double[] freshValues() {
        int size = sides.size();
        double[] values = new double[cells()];
        int[] planes = new int[Planes.SIDE];
        for (int side = 1; side < size; side++) {
            sides.copyPlanes(side, planes, 0);
            int points = GameResult.of(planes, 0).points();
            values[cell(side, 0)] = -points;
            values[cell(0, side)] = points;
            for (int other = 1; other < size; other++) {
                if (shared(side, other)) {
                    values[cell(side, other)] = Double.NaN;
                }
            }
        }
        values[0] = Double.NaN;
        return values;
    }

    /**
     * Number of unfinished positions.
     *
     * @return 601, 106,552 or 7,953,353
     */
    public int positions() {
        return (int) Arrays.stream(freshValues()).filter(value -> value == 0).count();
    }
}
