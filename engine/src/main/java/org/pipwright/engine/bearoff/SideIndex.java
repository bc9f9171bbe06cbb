package org.pipwright.engine.bearoff;

import org.pipwright.engine.position.Planes;

/**
 * Numbers the ways to have at most some checkers on the own points 1 to some point, the rest borne off.
 *
 * <p>With s(p) checkers on the points 1 to p, the numbers s(p) + p - 1 increase strictly with p, and the combinatorial
 * number system (Lehmer 1964, in Beckenbach, Applied Combinatorial Mathematics) ranks them: the index is the sum over p
 * of C(s(p) + p - 1, p). The index does not depend on the largest number of checkers, and the arrangements of at most n
 * checkers are exactly those below C(n + points, points).
 */
public final class SideIndex {
    /** Most arrangements a table may have: keeps indices and file offsets within an int. */
    private static final int MAX = 25_000_000;

    /** Points looked up at a time: byte j of an entry counts the set bits 0 to j of the entry's number. */
    private static final int CHUNK = 8;

    private static final long[] CUMULATED = cumulated();

    /** {@code BINOMIAL[16 * p + s]} is C(s + p - 1, p), for 0 to 15 checkers. */
    private final int[] binomial;

    private final int points;
    private final int checkers;
    private final int size;

    /**
     * An index.
     *
     * @param points highest point, 1 to 24
     * @param checkers most checkers, 1 to 15
     * @throws IllegalArgumentException if out of range, or there are more than 25 million arrangements
     */
    public SideIndex(int points, int checkers) {
        if (!inRange(points, checkers)) {
            throw new IllegalArgumentException("a table has 1 to 24 points and 1 to 15 checkers, not " + points
                    + " points and " + checkers + " checkers");
        }
        double arrangements = choose(checkers + points, points);
        if (arrangements > MAX) {
            throw new IllegalArgumentException(checkers + " checkers on " + points + " points have "
                    + Math.round(arrangements) + " arrangements: at most " + MAX + ", so use fewer points");
        }
        this.points = points;
        this.checkers = checkers;
        this.size = (int) arrangements;
        this.binomial = new int[16 * (points + 1)];
        for (int p = 1; p <= points; p++) {
            for (int s = 0; s <= checkers; s++) {
                binomial[16 * p + s] = (int) choose(s + p - 1, p);
            }
        }
    }

    private static boolean inRange(int points, int checkers) {
        return points >= 1 && points <= 24 && checkers >= 1 && checkers <= 15;
    }

    /** Whether an index of this size can be made. */
    static boolean fits(int points, int checkers) {
        return inRange(points, checkers) && choose(checkers + points, points) <= MAX;
    }

    /** The binomial coefficient n over k, exact while below 2^53. */
    private static double choose(int n, int k) {
        double result = 1;
        for (int i = 1; i <= k; i++) {
            result = result * (n - k + i) / i;
        }
        return result;
    }

    private static long[] cumulated() {
        long[] table = new long[1 << CHUNK];
        for (int bits = 0; bits < table.length; bits++) {
            for (int j = 0; j < CHUNK; j++) {
                table[bits] |= (long) Integer.bitCount(bits & (2 << j) - 1) << 8 * j;
            }
        }
        return table;
    }

    /**
     * Highest point that may hold checkers.
     *
     * @return 1 to 24
     */
    public int points() {
        return points;
    }

    /**
     * Most checkers on the board.
     *
     * @return 1 to 15
     */
    public int checkers() {
        return checkers;
    }

    /**
     * Number of arrangements, none on the board included.
     *
     * @return C(checkers + points, points)
     */
    public int size() {
        return size;
    }

    /**
     * Whether a side's checkers all stand where this index reaches.
     *
     * @param planes array that holds the side
     * @param at index of its plane 0
     * @return true if {@link #of} may be asked
     */
    public boolean covers(int[] planes, int at) {
        int board = Planes.occupied(planes, at) & Planes.ON_BOARD;
        return board >>> points + 1 == 0 && (checkers == 15 || Planes.checkers(planes, at, board) <= checkers);
    }

    /**
     * The index of an arrangement.
     *
     * @param planes array that holds the side; checkers borne off are ignored
     * @param at index of its plane 0; the side must be covered
     * @return 0 to size() - 1; 0 if no checker is on the board
     */
    public int of(int[] planes, int at) {
        int index = 0;
        int before = 0;
        for (int first = 1; first <= points; first += CHUNK) {
            long sums = CUMULATED[planes[at] >>> first & 0xFF]
                    + (CUMULATED[planes[at + 1] >>> first & 0xFF] << 1)
                    + (CUMULATED[planes[at + 2] >>> first & 0xFF] << 2)
                    + (CUMULATED[planes[at + 3] >>> first & 0xFF] << 3);
            int last = Math.min(first + CHUNK - 1, points);
            for (int p = first; p <= last; p++) {
                index += binomial[16 * p + before + (int) (sums & 0xFF)];
                sums = p == last ? sums : sums >>> 8;
            }
            before += (int) (sums & 0xFF);
        }
        return index;
    }

    /**
     * Writes the arrangement of an index as bit planes.
     *
     * @param index 0 to size() - 1
     * @param planes array to write to
     * @param at index of the side's plane 0; its four planes are overwritten, with no checker on place 0
     */
    public void write(int index, int[] planes, int at) {
        for (int k = 0; k < Planes.SIDE; k++) {
            planes[at + k] = 0;
        }
        int rest = index;
        int above = -1;
        for (int p = points; p >= 1; p--) {
            int sum = above < 0 ? checkers : above;
            while (binomial[16 * p + sum] > rest) {
                sum--;
            }
            rest -= binomial[16 * p + sum];
            put(planes, at, p + 1, above - sum);
            above = sum;
        }
        put(planes, at, 1, above);
    }

    private static void put(int[] planes, int at, int point, int count) {
        for (int k = 0; k < Planes.SIDE && count > 0; k++) {
            planes[at + k] |= (count >> k & 1) << point;
        }
    }

    /**
     * Checkers on the board in an arrangement.
     *
     * @param index 0 to size() - 1
     * @return 0 to checkers()
     */
    public int checkersOf(int index) {
        int sum = checkers;
        while (binomial[16 * points + sum] > index) {
            sum--;
        }
        return sum;
    }
}
