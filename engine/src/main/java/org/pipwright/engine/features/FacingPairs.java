package org.pipwright.engine.features;

import org.pipwright.engine.position.Planes;

/**
 * Pairs of places that face each other: one where the side on roll has checkers, one where the opponent has, which have
 * yet to pass each other. A pair is an input of 1, by what is on either place: a blot, or two checkers or more. What blots
 * risk, what they may hit and what blocks them is decided pair by pair, and is a sum for a network that is told the pairs.
 *
 * <p>Checkers on place p (25 is the bar) and on the opponent's place q, each numbered from its own home, have yet to pass
 * each other if p + q is 26 or more: there are {@value #COUNT} inputs.
 */
public final class FacingPairs {
    /** Kinds of a pair: a blot or two and more on either place. */
    private static final int KINDS = 4;

    /** 25 pairs of the bar, 24 of point 24, and so on, of each kind. */
    public static final int COUNT = KINDS * Planes.BAR * (Planes.BAR + 1) / 2;

    /** No position has more: fifteen places of each side. */
    public static final int MAX = 15 * 15;

    private static final int ALL = -1;

    private FacingPairs() {}

    /**
     * Lists the pairs of a position in rising order.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param out where to write numbers 0 to {@value #COUNT} - 1; room for {@value #MAX}
     * @param outAt where to begin
     * @return how many there are
     */
    public static int list(int[] planes, int at, int[] out, int outAt) {
        return list(planes, at, ALL, ALL, out, outAt);
    }

    /**
     * Lists the pairs of a position that some places have a part in.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param mine places of the side on roll, one bit each
     * @param theirs places of the opponent, as it numbers them
     * @param out where to write the numbers of pairs with a place of either set, in rising order; room for {@value #MAX}
     * @param outAt where to begin
     * @return how many there are
     */
    public static int list(int[] planes, int at, int mine, int theirs, int[] out, int outAt) {
        int other = at + Planes.SIDE;
        int held = Planes.held(planes, at);
        int otherHeld = Planes.held(planes, other);
        int opponents = Planes.occupied(planes, other);
        int next = outAt;
        for (int left = Planes.occupied(planes, at) & Planes.ON_BOARD; left != 0; left &= left - 1) {
            int p = Integer.numberOfTrailingZeros(left);
            int nearest = Planes.BAR + 1 - p;
            int facing = opponents & Planes.ON_BOARD & -1 << nearest & ((mine >>> p & 1) != 0 ? ALL : theirs);
            // Before those of p come the pairs of places 1 to p - 1, which face 1, 2 and so on.
            int first = KINDS * (p * (p - 1) / 2 - nearest) + 2 * (held >>> p & 1);
            for (; facing != 0; facing &= facing - 1) {
                int q = Integer.numberOfTrailingZeros(facing);
                out[next++] = first + KINDS * q + (otherHeld >>> q & 1);
            }
        }
        return next - outAt;
    }

    /**
     * Places of one side whose part in pairs differs between two positions.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @param planes2 array that holds the side in the other position
     * @param at2 likewise
     * @return one bit a place
     */
    public static int changed(int[] planes, int at, int[] planes2, int at2) {
        int held = Planes.held(planes, at) ^ Planes.held(planes2, at2);
        return (held | Planes.occupied(planes, at) ^ Planes.occupied(planes2, at2)) & Planes.ON_BOARD;
    }
}
