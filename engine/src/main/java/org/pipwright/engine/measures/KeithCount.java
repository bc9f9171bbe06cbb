package org.pipwright.engine.measures;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * The Keith count of a race and its doubling advice (T. Keith, Cube Handling in Noncontact Positions, 2004, fitted to
 * 280,721 real positions). A side's count is its pips, plus 2 for each checker beyond one on the 1 point, 1 for each
 * beyond one on the 2 point, 1 for each beyond three on the 3 point, and 1 for each of the points 4, 5 and 6 that is
 * empty. The side on roll raises its count by a seventh, rounded down.
 *
 * @param onRoll count of the side on roll, raised by a seventh
 * @param opponent count of the opponent
 */
public record KeithCount(int onRoll, int opponent) {
    private static final int DOUBLE = 4;
    private static final int REDOUBLE = 3;
    private static final int TAKE = 2;

    /**
     * The counts of a position.
     *
     * @param position any position; the count is meant for races
     * @return both counts
     */
    public static KeithCount of(Position position) {
        int[] planes = position.toPlanes();
        int mine = count(planes, 0);
        return new KeithCount(mine + mine / 7, count(planes, Planes.SIDE));
    }

    /**
     * The count of a side that is not on roll.
     *
     * @param planes array that holds the side
     * @param at index of its plane 0
     * @return pips with the penalties
     */
    public static int count(int[] planes, int at) {
        int count = Planes.pips(planes, at);
        count += 2 * beyond(planes, at, 1, 1);
        count += beyond(planes, at, 2, 1);
        count += beyond(planes, at, 3, 3);
        for (int point = 4; point <= 6; point++) {
            count += Planes.count(planes, at, point) == 0 ? 1 : 0;
        }
        return count;
    }

    private static int beyond(int[] planes, int at, int point, int free) {
        return Math.max(0, Planes.count(planes, at, point) - free);
    }

    /**
     * Whether the rule says to double from the centre.
     *
     * @return true if the roller's count exceeds the opponent's by no more than 4
     */
    public boolean doubles() {
        return onRoll - opponent <= DOUBLE;
    }

    /**
     * Whether the rule says to redouble.
     *
     * @return true if the roller's count exceeds the opponent's by no more than 3
     */
    public boolean redoubles() {
        return onRoll - opponent <= REDOUBLE;
    }

    /**
     * Whether the rule says to take a double.
     *
     * @return true if the roller's count exceeds the opponent's by at least 2
     */
    public boolean takes() {
        return onRoll - opponent >= TAKE;
    }
}
