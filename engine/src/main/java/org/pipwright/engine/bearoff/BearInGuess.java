package org.pipwright.engine.bearoff;

import org.pipwright.engine.position.Planes;

/**
 * A guess of the mean rolls of a side that still has checkers to bring home, for choosing plays on the way: the table's
 * mean once they have landed on the home points that make the sum least, plus so much of a roll for each pip that takes,
 * plus a share that grows with the root of their number, since nothing can be borne off before the last of them is home.
 * Form and numbers are our own, fitted to exact tables of 8, 10 and 16 points.
 * Immutable, shared by threads.
 */
final class BearInGuess {
    /** The mean roll is 49/6 pips. */
    private static final float ROLLS_PER_PIP = 6 / 49f;

    private static final double ROLLS_PER_OUTER_PIP = ROLLS_PER_PIP - 0.010;

    private static final double ROLLS_PER_ROOT = 0.21;

    private static final int HIGHEST = 6;

    /** Lowest point worth landing on: further down every pip is wasted. */
    private static final int LOWEST = 2;

    private static final int OUTER = Planes.ON_BOARD & ~Planes.HOME;

    /** Home points, and as a seventh the checkers still outside. */
    private final SideIndex index;

    /** By {@link #index}: mean rolls from when the last outer checker reaches point 6 on. */
    private final float[] rolls;

    BearInGuess(OneSidedTable table) {
        index = new SideIndex(HIGHEST + 1, table.index().checkers());
        rolls = new float[index.size()];
        int[] planes = new int[Planes.SIDE];
        // A checker moved from outside to a home point makes the index larger, so the largest come first.
        for (int i = rolls.length - 1; i >= 0; i--) {
            index.write(i, planes, 0);
            rolls[i] = (planes[0] | planes[1] | planes[2] | planes[3]) >>> HIGHEST + 1 == 0
                    ? (float) table.mean(table.index().of(planes, 0))
                    : landOne(planes);
        }
    }

    /** The least over the home points that one outer checker can land on. */
    private float landOne(int[] planes) {
        Planes.remove(planes, 0, HIGHEST + 1);
        float least = Float.POSITIVE_INFINITY;
        for (int point = LOWEST; point <= HIGHEST; point++) {
            Planes.add(planes, 0, point);
            float pips = (HIGHEST - point) * ROLLS_PER_PIP;
            least = Math.min(least, rolls[index.of(planes, 0)] + pips);
            Planes.remove(planes, 0, point);
        }
        return least;
    }

    /** The guess for a side, whose four planes are in an array; four more ints serve as scratch. */
    double rolls(int[] planes, int at, int[] scratch) {
        int outer = Planes.occupied(planes, at) & OUTER;
        if (outer == 0) {
            return rolls[index.of(planes, at)];
        }
        int checkers = Planes.checkers(planes, at, outer);
        int pips = -checkers * HIGHEST;
        for (int k = 0; k < Planes.SIDE; k++) {
            scratch[k] = planes[at + k] & outer;
        }
        pips += Planes.pips(scratch, 0);
        for (int k = 0; k < Planes.SIDE; k++) {
            scratch[k] = planes[at + k] & Planes.HOME | (checkers >> k & 1) << HIGHEST + 1;
        }
        return rolls[index.of(scratch, 0)] + pips * ROLLS_PER_OUTER_PIP + ROLLS_PER_ROOT * Math.sqrt(checkers);
    }
}
