package org.pipwright.engine.bearoff;

import org.pipwright.engine.position.Planes;

/**
 * A guess of the mean rolls until a side bears off its first checker, for choosing plays of a side that only wants to
 * save the gammon: the table's mean when all are home, else a constant, so much for each pip that the outer checkers
 * need to their 6 point, and a share that grows with the root of their number. Form and numbers are our own, fitted to
 * exact tables of 8, 12 and 16 points. Serves any number of threads.
 */
final class FirstOffGuess {
    private static final int HIGHEST = 6;

    private static final int OUTER = Planes.ON_BOARD & ~Planes.HOME;

    private static final double CONSTANT = 0.35;

    private static final double ROLLS_PER_PIP = 0.095;

    private static final double ROLLS_PER_ROOT = 0.75;

    private final OneSidedTable table;

    FirstOffGuess(OneSidedTable table) {
        this.table = table;
    }

    /** The guess for a side, whose four planes are in an array; four more ints serve as scratch. */
    double rolls(int[] planes, int at, int[] scratch) {
        int occupied = Planes.occupied(planes, at);
        if ((occupied & 1) != 0) {
            return 0;
        }
        int outer = occupied & OUTER;
        if (outer == 0) {
            return table.meanToFirst(table.index().of(planes, at));
        }
        for (int k = 0; k < Planes.SIDE; k++) {
            scratch[k] = planes[at + k] & outer;
        }
        int checkers = Planes.checkers(scratch, 0, outer);
        int pips = Planes.pips(scratch, 0) - HIGHEST * checkers;
        return CONSTANT + ROLLS_PER_PIP * pips + ROLLS_PER_ROOT * Math.sqrt(checkers);
    }
}
