package org.pipwright.engine.bearoff;

import org.pipwright.engine.position.Planes;

/**
 * A guess of the mean rolls of a side that still has checkers to bring home, for choosing plays on the way: the table's
 * mean once they have landed on the home points that make the sum least, plus so much of a roll for each pip that takes,
 * plus what depends on where they stand: how far each has to go and the rearmost, how many there are and on how many points,
 * and what is at home meanwhile. Form and numbers are our own, by least squares from exact means of 9,000 random sides each
 * of 8 to 10 checkers on 10 points, 4 to 6 on 16, 6 to 8 on 12 and 13 to 15 on 8.
 *
 * <p>Play by it needs more rolls than the best, on average over random sides: 0.006 with ten checkers on 10 points, 0.007
 * with eight on 12, 0.012 with six on 16 and 0.004 with fifteen on 8.
 *
 * <p>There are 170,000 ways to stand at home with others outside, of which a race meets a few thousand: each is found when it
 * is first asked for. Serves one thread.
 */
final class BearInGuess {
    /** The mean roll is 49/6 pips. */
    private static final float ROLLS_PER_PIP = 6 / 49f;

    private static final int HIGHEST = 6;

    /** For each checker outside, by its distance from home, of which that next to home is odd. */
    private static final double[] BY_DISTANCE = byDistance(0.1059, 0.0508, 0.0198);

    private static final double ALL = -0.2122;
    private static final double A_CHECKER = -0.2871;
    private static final double ROOT_OF_CHECKERS = 0.4941;
    private static final double ROOT_OF_PIPS = -0.1045;
    private static final double FARTHEST = 0.0362;
    private static final double ROOT_OF_FARTHEST = -0.1350;
    private static final double MEAN_DISTANCE = 0.0451;
    private static final double WEIGHTED_DISTANCE = -0.0141;
    private static final double A_POINT = -0.0271;

    /** By home point, for each checker there. */
    private static final double[] AT_HOME = {0, 0.0167, 0.0165, 0.0114, 0.0091, -0.0047, -0.0130};

    /** By home point, if it is empty. */
    private static final double[] EMPTY = {0, 0, -0.0082, -0.0082, 0.0130, 0.0174, 0.0182};

    /** Lowest point worth landing on: further down every pip is wasted. */
    private static final int LOWEST = 2;

    private static final int OUTER = Planes.ON_BOARD & ~Planes.HOME;

    /** Home points, and as a seventh the checkers still outside. */
    private final SideIndex index;

    private final OneSidedTable table;

    /** By {@link #index}: the least mean over the home points that the outer checkers can land on; 0 until it is asked for. */
    private final float[] landed;

    /** The same with what the home points and the number of checkers outside add. */
    private final float[] guesses;

    BearInGuess(OneSidedTable table) {
        this.table = table;
        index = new SideIndex(HIGHEST + 1, table.index().checkers());
        landed = new float[index.size()];
        guesses = new float[index.size()];
    }

    private static double[] byDistance(double... odd) {
        double[] rolls = new double[Planes.PLACES - HIGHEST];
        for (int d = 1; d < rolls.length; d++) {
            rolls[d] = 0.0914 * d + 0.1679 * Math.sqrt(d) + (d <= odd.length ? odd[d - 1] : 0);
        }
        return rolls;
    }

    /** What the home points and the number of checkers outside make of the least mean; nothing if all are home. */
    private static double correction(int[] planes) {
        int outside = Planes.count(planes, 0, HIGHEST + 1);
        if (outside == 0) {
            return 0;
        }
        double sum = ALL + A_CHECKER * outside + ROOT_OF_CHECKERS * Math.sqrt(outside);
        for (int point = 1; point <= HIGHEST; point++) {
            int checkers = Planes.count(planes, 0, point);
            sum += checkers == 0 ? EMPTY[point] : checkers * AT_HOME[point];
        }
        return sum;
    }

    /** What depends on the home points and the number of checkers outside, which are the place behind them. */
    private float guess(int[] planes) {
        int at = index.of(planes, 0);
        if (guesses[at] == 0) {
            guesses[at] = landed(planes, at) + (float) correction(planes);
        }
        return guesses[at];
    }

    private float landed(int[] planes, int at) {
        if (landed[at] == 0) {
            landed[at] = Planes.count(planes, 0, HIGHEST + 1) == 0
                    ? (float) table.mean(table.index().of(planes, 0))
                    : landOne(planes);
        }
        return landed[at];
    }

    /** The least over the home points that one outer checker can land on; leaves the planes as they were. */
    private float landOne(int[] planes) {
        Planes.remove(planes, 0, HIGHEST + 1);
        float least = Float.POSITIVE_INFINITY;
        for (int point = LOWEST; point <= HIGHEST; point++) {
            Planes.add(planes, 0, point);
            float pips = (HIGHEST - point) * ROLLS_PER_PIP;
            least = Math.min(least, landed(planes, index.of(planes, 0)) + pips);
            Planes.remove(planes, 0, point);
        }
        Planes.add(planes, 0, HIGHEST + 1);
        return least;
    }

    /** The guess for a side, whose four planes are in an array; four more ints serve as scratch. */
    double rolls(int[] planes, int at, int[] scratch) {
        int outer = Planes.occupied(planes, at) & OUTER;
        if (outer == 0) {
            System.arraycopy(planes, at, scratch, 0, Planes.SIDE);
            return guess(scratch);
        }
        int checkers = 0;
        int points = 0;
        int pips = 0;
        int squares = 0;
        int farthest = 0;
        double each = 0;
        for (int left = outer; left != 0; left &= left - 1) {
            int place = Integer.numberOfTrailingZeros(left);
            int number = Planes.count(planes, at, place);
            farthest = place - HIGHEST;
            checkers += number;
            points++;
            pips += number * farthest;
            squares += number * farthest * farthest;
            each += number * BY_DISTANCE[farthest];
        }
        for (int k = 0; k < Planes.SIDE; k++) {
            scratch[k] = planes[at + k] & Planes.HOME | (checkers >> k & 1) << HIGHEST + 1;
        }
        return guess(scratch)
                + each
                + ROOT_OF_PIPS * Math.sqrt(pips)
                + FARTHEST * farthest
                + ROOT_OF_FARTHEST * Math.sqrt(farthest)
                + MEAN_DISTANCE * pips / checkers
                + WEIGHTED_DISTANCE * squares / pips
                + A_POINT * points;
    }
}
