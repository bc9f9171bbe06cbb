package org.pipwright.engine.matchtable;

import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.WalkGame;
import org.pipwright.engine.score.MatchScore;

/**
 * A walk's values at a score for any split of wins and losses, fast: it is solved on a grid of the two sides' shares of
 * gammons (backgammons among them) and read between the grid points in straight lines; what backgammons change is added in
 * proportion to their share. Keeps what it has solved; serves one thread.
 */
final class ShareGrid {
    /** Cells of the grid of shares, from 0 to 1. */
    private static final int CELLS = 8;

    /** Which side wins backgammons at a grid point, one cell's worth of them: nobody, this side or the other. */
    private static final int NONE = 0;

    private static final int MINE = 1;
    private static final int THEIRS = 2;
    private static final int KINDS = 3;

    private final MatchScore score;
    private final MatchTable table;
    private final CubeWalk walk;
    private final WalkGame[] solved = new WalkGame[(CELLS + 1) * (CELLS + 1) * KINDS];

    ShareGrid(MatchScore score, MatchTable table, CubeWalk walk) {
        this.score = score;
        this.table = table;
        this.walk = walk;
    }

    /** What rolling is worth to the side on roll. */
    double rolling(CubeState cube, double win, GammonShares shares) {
        double mine = (shares.winGammon() + shares.winBackgammon()) * CELLS;
        double theirs = (shares.loseGammon() + shares.loseBackgammon()) * CELLS;
        int row = Math.min((int) mine, CELLS - 1);
        double down = mine - row;
        double gammons = down <= 0
                ? inRow(row, theirs, cube, win)
                : down >= 1
                        ? inRow(row + 1, theirs, cube, win)
                        : (1 - down) * inRow(row, theirs, cube, win) + down * inRow(row + 1, theirs, cube, win);
        return gammons + backgammons(mine, theirs, cube, win, shares);
    }

    /** A straight line between two grid points; what it does not need is not solved. */
    private double inRow(int row, double theirs, CubeState cube, double win) {
        int column = Math.min((int) theirs, CELLS - 1);
        double across = theirs - column;
        if (across <= 0) {
            return at(row, column, NONE, cube, win);
        }
        return across >= 1
                ? at(row, column + 1, NONE, cube, win)
                : (1 - across) * at(row, column, NONE, cube, win) + across * at(row, column + 1, NONE, cube, win);
    }

    /** What backgammons change: in proportion to their shares, at the nearest grid point that has room for them. */
    private double backgammons(double mine, double theirs, CubeState cube, double win, GammonShares shares) {
        int row = (int) Math.min(Math.max(Math.round(mine), 1), CELLS);
        int column = (int) Math.min(Math.max(Math.round(theirs), 1), CELLS);
        double change = 0;
        if (shares.winBackgammon() > 0) {
            change += CELLS
                    * shares.winBackgammon()
                    * (at(row, column, MINE, cube, win) - at(row, column, NONE, cube, win));
        }
        if (shares.loseBackgammon() > 0) {
            change += CELLS
                    * shares.loseBackgammon()
                    * (at(row, column, THEIRS, cube, win) - at(row, column, NONE, cube, win));
        }
        return change;
    }

    private double at(int row, int column, int backgammons, CubeState cube, double win) {
        int index = (row * (CELLS + 1) + column) * KINDS + backgammons;
        if (solved[index] == null) {
            double part = 1.0 / CELLS;
            double mine = backgammons == MINE ? part : 0;
            double theirs = backgammons == THEIRS ? part : 0;
            GammonShares shares = new GammonShares(row * part - mine, mine, column * part - theirs, theirs);
            solved[index] = new WalkGame(walk, new MatchPayoffs(table, score, shares));
        }
        return solved[index].rolling(cube, true, win);
    }
}
