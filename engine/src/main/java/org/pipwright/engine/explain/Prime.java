package org.pipwright.engine.explain;

import org.pipwright.engine.position.Planes;

/**
 * The longest row of a side's made points that has checkers of the other side behind it; of equally long rows the one with
 * the most behind it, then the lowest. (From four points on such a row is called a prime: common practice, no source.)
 *
 * @param length points in the row; 0 if no made point has anything behind it
 * @param from its lowest point, counted from its owner's home; 0 if there is none
 * @param trapped checkers of the other side behind the row, those on the bar included
 */
public record Prime(int length, int from, int trapped) {
    /** No row with anything behind it. */
    public static final Prime NONE = new Prime(0, 0, 0);

    /**
     * The prime of a side.
     *
     * @param planes array that holds the position
     * @param side index of the owner's plane 0
     * @param other index of the other side's plane 0
     * @return the prime
     */
    public static Prime of(int[] planes, int side, int other) {
        int made = Planes.held(planes, side) & Planes.POINTS;
        Prime best = NONE;
        while (made != 0) {
            int from = Integer.numberOfTrailingZeros(made);
            int length = Integer.numberOfTrailingZeros(~(made >>> from));
            // The other side's place q is this side's point 25 - q, so what is behind has q above 25 - from.
            int behind = Planes.checkers(planes, other, Planes.ON_BOARD & -1 << 26 - from);
            Prime row = new Prime(length, from, behind);
            best = behind > 0 && row.longer(best) ? row : best;
            made &= -1 << from + length;
        }
        return best;
    }

    private boolean longer(Prime than) {
        return length > than.length || length == than.length && trapped > than.trapped;
    }
}
