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

    /** The least that two places come to that face each other. */
    private static final int NEAREST = Planes.BAR + 1;

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
     * Lists the pairs of a position that some places have a part in: those of places of the side on roll in rising order,
     * then the others in the order of the opponent's places.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @param mine places of the side on roll, one bit each
     * @param theirs places of the opponent, as it numbers them
     * @param out where to write the numbers of pairs with a place of either set; room for {@value #MAX}
     * @param outAt where to begin
     * @return how many there are
     */
    public static int list(int[] planes, int at, int mine, int theirs, int[] out, int outAt) {
        int other = at + Planes.SIDE;
        int own = Planes.occupied(planes, at) & Planes.ON_BOARD;
        int held = Planes.held(planes, at);
        int opponents = Planes.occupied(planes, other) & Planes.ON_BOARD;
        int otherHeld = Planes.held(planes, other);
        int next = outAt;
        for (int left = own & mine; left != 0; left &= left - 1) {
            int p = Integer.numberOfTrailingZeros(left);
            int first = first(p) + 2 * (held >>> p & 1);
            for (int facing = opponents & -1 << NEAREST - p; facing != 0; facing &= facing - 1) {
                int q = Integer.numberOfTrailingZeros(facing);
                out[next++] = first + KINDS * q + (otherHeld >>> q & 1);
            }
        }
        for (int left = opponents & theirs; left != 0; left &= left - 1) {
            int q = Integer.numberOfTrailingZeros(left);
            int ofPlace = KINDS * q + (otherHeld >>> q & 1);
            for (int facing = own & ~mine & -1 << NEAREST - q; facing != 0; facing &= facing - 1) {
                int p = Integer.numberOfTrailingZeros(facing);
                out[next++] = first(p) + 2 * (held >>> p & 1) + ofPlace;
            }
        }
        return next - outAt;
    }

    /** Before the pairs of p, the first of which is with place 26 - p, come those of places 1 to p - 1, which face 1, 2 and so on. */
    private static int first(int p) {
        return KINDS * (p * (p - 1) / 2 - (NEAREST - p));
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
