package org.pipwright.engine.explain;

import org.pipwright.engine.position.Planes;

/**
 * How a side's checkers are spread (which numbers are too many or too deep: common practice, no source).
 *
 * @param stacked checkers beyond the third on a point, all points together
 * @param buried checkers on its own 1 and 2 points
 * @param gaps points of its home without a checker
 * @param homeBlots blots in its home
 * @param spare pips it can play before it has to break a point from 4 to 8 or go out with a back checker: those of free
 *     checkers down to the 3 point. Free are all from the 9 to the 18 point, and on each point from 4 to 8 all but two
 */
public record Spread(int stacked, int buried, int gaps, int homeBlots, int spare) {
    private static final int MANY = 3;
    private static final int DEEP = 2;
    private static final int HOME = 6;
    private static final int LOW = 3;
    private static final int BLOCK = 8;
    private static final int FAR = 18;

    /**
     * The spread of a side.
     *
     * @param planes array that holds the side
     * @param at index of its plane 0
     * @return the numbers
     */
    public static Spread of(int[] planes, int at) {
        int stacked = 0;
        int spare = 0;
        for (int point = 1; point < Planes.BAR; point++) {
            int count = Planes.count(planes, at, point);
            stacked += Math.max(0, count - MANY);
            int free = point > BLOCK ? count : Math.max(0, count - 2);
            spare += point > LOW && point <= FAR ? free * (point - LOW) : 0;
        }
        int occupied = Planes.occupied(planes, at) & Planes.HOME;
        int held = Planes.held(planes, at) & Planes.HOME;
        return new Spread(
                stacked,
                Planes.checkers(planes, at, (1 << DEEP + 1) - 2),
                HOME - Integer.bitCount(occupied),
                Integer.bitCount(occupied & ~held),
                spare);
    }
}
