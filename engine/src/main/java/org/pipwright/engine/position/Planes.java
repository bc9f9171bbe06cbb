package org.pipwright.engine.position;

/**
 * Word operations on bit planes, for hot loops.
 *
 * <p>One side of a board is four ints, plane 0 to plane 3. Bit {@code p} of plane {@code k} is binary digit {@code k}
 * of the number of checkers on place {@code p}, counted from that side's own home: 0 is borne off, 1 to 24 are the
 * points, 25 is the bar. A whole position is {@value #STRIDE} ints: the four planes of the side on roll, then the four
 * of the opponent, each seen from its own side.
 *
 * <p>Nothing here checks its arguments; {@link Position} is the checked form.
 */
public final class Planes {
    /** Ints in one side: its four planes. */
    public static final int SIDE = 4;

    /** Ints in one position: both sides. */
    public static final int STRIDE = 2 * SIDE;

    /** Place of borne-off checkers. */
    public static final int OFF = 0;

    /** Place of checkers on the bar. */
    public static final int BAR = 25;

    /** Number of places: off, 24 points, bar. */
    public static final int PLACES = 26;

    /** Bits of the 24 points. */
    public static final int POINTS = 0x01FF_FFFE;

    /** Bits of the home board, own points 1 to 6. */
    public static final int HOME = 0x7E;

    /** Bits of every place a checker can still move from: points and bar. */
    public static final int ON_BOARD = 0x03FF_FFFE;

    /** {@code WEIGHT[j]} has the bits of all places whose number has binary digit j set; used to weigh places. */
    private static final int[] WEIGHT = new int[5];

    static {
        for (int place = 0; place < PLACES; place++) {
            for (int j = 0; j < WEIGHT.length; j++) {
                if ((place >> j & 1) != 0) {
                    WEIGHT[j] |= 1 << place;
                }
            }
        }
    }

    private Planes() {}

    /**
     * Places as the other side numbers them: own point p is the other side's point 25 - p, and vice versa.
     *
     * @param places a set of places, one bit each
     * @return the mirrored set
     */
    public static int mirror(int places) {
        return Integer.reverse(places) >>> 6;
    }

    /**
     * Number of checkers on a place.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @param place 0 to 25
     * @return 0 to 15
     */
    public static int count(int[] planes, int at, int place) {
        return (planes[at] >>> place & 1)
                | (planes[at + 1] >>> place & 1) << 1
                | (planes[at + 2] >>> place & 1) << 2
                | (planes[at + 3] >>> place & 1) << 3;
    }

    /**
     * Places with at least one checker, off included.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @return one bit a place
     */
    public static int occupied(int[] planes, int at) {
        return planes[at] | planes[at + 1] | planes[at + 2] | planes[at + 3];
    }

    /**
     * Places with at least two checkers, off and bar included.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @return one bit a place
     */
    public static int held(int[] planes, int at) {
        return planes[at + 1] | planes[at + 2] | planes[at + 3];
    }

    /**
     * Adds one checker to a place by a ripple carry through the planes.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @param place 0 to 25, holding at most 14
     */
    public static void add(int[] planes, int at, int place) {
        int carry = 1 << place;
        for (int k = at; k < at + SIDE; k++) {
            planes[k] ^= carry;
            carry &= ~planes[k];
        }
    }

    /**
     * Takes one checker from a place by a ripple borrow through the planes.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @param place 0 to 25, holding at least one
     */
    public static void remove(int[] planes, int at, int place) {
        int borrow = 1 << place;
        for (int k = at; k < at + SIDE; k++) {
            planes[k] ^= borrow;
            borrow &= planes[k];
        }
    }

    /**
     * Pip count: places times checkers, the bar counting 25 and off 0.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @return pips to bear off every checker, 0 to 375
     */
    public static int pips(int[] planes, int at) {
        int pips = 0;
        for (int k = 0; k < SIDE; k++) {
            int plane = planes[at + k];
            int sum = 0;
            for (int j = 0; j < WEIGHT.length; j++) {
                sum += Integer.bitCount(plane & WEIGHT[j]) << j;
            }
            pips += sum << k;
        }
        return pips;
    }

    /**
     * Number of checkers on a set of places.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @param places a set of places, one bit each
     * @return 0 to 15
     */
    public static int checkers(int[] planes, int at, int places) {
        return Integer.bitCount(planes[at] & places)
                + 2 * Integer.bitCount(planes[at + 1] & places)
                + 4 * Integer.bitCount(planes[at + 2] & places)
                + 8 * Integer.bitCount(planes[at + 3] & places);
    }

    /**
     * Own place furthest from home that holds a checker.
     *
     * @param planes array that holds the side
     * @param at index of the side's plane 0
     * @return 25 if a checker is on the bar, 0 if all are borne off
     */
    public static int rearmost(int[] planes, int at) {
        return 31 - Integer.numberOfLeadingZeros(occupied(planes, at) & ON_BOARD | 1);
    }

    /**
     * Whether the two sides still have to pass each other.
     *
     * @param planes array that holds the position
     * @param at index of the position's first plane
     * @return true if some checker of one side is behind some checker of the other
     */
    public static boolean contact(int[] planes, int at) {
        return rearmost(planes, at) + rearmost(planes, at + SIDE) > 25;
    }

    /**
     * Turns a position to the other side.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     */
    public static void swap(int[] planes, int at) {
        for (int k = at; k < at + SIDE; k++) {
            int mine = planes[k];
            planes[k] = planes[k + SIDE];
            planes[k + SIDE] = mine;
        }
    }

    /**
     * Copies a position as its opponent sees it.
     *
     * @param from array that holds the position
     * @param at index of its first plane
     * @param to target array
     * @param toAt index of the target's first plane
     */
    public static void copySwapped(int[] from, int at, int[] to, int toAt) {
        System.arraycopy(from, at + SIDE, to, toAt, SIDE);
        System.arraycopy(from, at, to, toAt + SIDE, SIDE);
    }
}
