package org.pipwright.engine.features;

import org.pipwright.engine.position.Planes;

/**
 * Measures of one side of a position, by word operations on its bit planes. They feed networks and are meant to be fast;
 * where they simplify the rules they say so.
 */
public final class Measures {
    /** How far ahead {@link #freedom} looks, in pips. */
    private static final int AHEAD = 12;

    private static final float[] FREEDOM = freedomTable();

    private Measures() {}

    /**
     * Rolls that hit a blot, of 36. Every way of one checker over one or two dice (up to four with a double), and from
     * the bar, is counted; the duty to play both dice, which can force a hit or forbid one, is left aside.
     *
     * @param planes array that holds the position
     * @param side index of the hitter's plane 0
     * @param other index of the other side's plane 0
     * @return 0 to 36
     */
    public static int hittingRolls(int[] planes, int side, int other) {
        int held = Planes.held(planes, other);
        int blots = Planes.mirror(planes[other] & ~held) & Planes.POINTS;
        int occupied = Planes.occupied(planes, side) & Planes.ON_BOARD;
        if ((blots & Integer.highestOneBit(occupied) - 1) == 0) {
            return 0;
        }
        int open = Planes.POINTS & ~Planes.mirror(held);
        int onBar = occupied >>> Planes.BAR == 0 ? 0 : Planes.count(planes, side, Planes.BAR);
        return onBar == 0 ? hitsFree(occupied, blots, open) : hitsFromBar(occupied, onBar, blots, open);
    }

    /**
     * For each die d: {@code whence} has the places from which it hits, {@code direct} the checkers that stand there, and
     * {@code open} the points that a checker may reach with it. Two dice hit if either does, or if one reaches a place from
     * which the other does. Written out, since every branch would be a guess.
     */
    private static int hitsFree(int occupied, int blots, int open) {
        int whence1 = blots << 1;
        int whence2 = blots << 2;
        int whence3 = blots << 3;
        int whence4 = blots << 4;
        int whence5 = blots << 5;
        int whence6 = blots << 6;
        int direct1 = occupied & whence1;
        int direct2 = occupied & whence2;
        int direct3 = occupied & whence3;
        int direct4 = occupied & whence4;
        int direct5 = occupied & whence5;
        int direct6 = occupied & whence6;
        int open1 = occupied >>> 1 & open;
        int open2 = occupied >>> 2 & open;
        int open3 = occupied >>> 3 & open;
        int open4 = occupied >>> 4 & open;
        int open5 = occupied >>> 5 & open;
        int open6 = occupied >>> 6 & open;
        int pairs = any(direct2 | direct1 | open2 & whence1 | open1 & whence2)
                + any(direct3 | direct1 | open3 & whence1 | open1 & whence3)
                + any(direct3 | direct2 | open3 & whence2 | open2 & whence3)
                + any(direct4 | direct1 | open4 & whence1 | open1 & whence4)
                + any(direct4 | direct2 | open4 & whence2 | open2 & whence4)
                + any(direct4 | direct3 | open4 & whence3 | open3 & whence4)
                + any(direct5 | direct1 | open5 & whence1 | open1 & whence5)
                + any(direct5 | direct2 | open5 & whence2 | open2 & whence5)
                + any(direct5 | direct3 | open5 & whence3 | open3 & whence5)
                + any(direct5 | direct4 | open5 & whence4 | open4 & whence5)
                + any(direct6 | direct1 | open6 & whence1 | open1 & whence6)
                + any(direct6 | direct2 | open6 & whence2 | open2 & whence6)
                + any(direct6 | direct3 | open6 & whence3 | open3 & whence6)
                + any(direct6 | direct4 | open6 & whence4 | open4 & whence6)
                + any(direct6 | direct5 | open6 & whence5 | open5 & whence6);
        int doubles = any(direct1 | upToThree(open1, 1, open) & whence1)
                + any(direct2 | upToThree(open2, 2, open) & whence2)
                + any(direct3 | upToThree(open3, 3, open) & whence3)
                + any(direct4 | upToThree(open4, 4, open) & whence4)
                + any(direct5 | upToThree(open5, 5, open) & whence5)
                + any(direct6 | upToThree(open6, 6, open) & whence6);
        return 2 * pairs + doubles;
    }

    /** 1 if there is any place, none of which has bit 31. */
    private static int any(int places) {
        return -places >>> 31;
    }

    /** Points that checkers reach with one, two or three steps of a die, of which the first has been made. */
    private static int upToThree(int once, int die, int open) {
        int twice = once >>> die & open;
        return once | twice | twice >>> die & open;
    }

    /** Whether some checker reaches a blot in up to the given number of steps of one die. */
    private static boolean reach(int from, int die, int steps, int open, int blots) {
        int at = from;
        int seen = 0;
        for (int step = 0; step < steps; step++) {
            at = at >>> die & open;
            seen |= at;
        }
        return (seen & blots) != 0;
    }

    private static int hitsFromBar(int occupied, int onBar, int blots, int open) {
        int entry = open & 0x3F << 19;
        int others = occupied & Planes.POINTS;
        int rolls = 0;
        for (int high = 1; high <= 6; high++) {
            int atHigh = 1 << Planes.BAR - high & entry;
            for (int low = 1; low < high; low++) {
                int atLow = 1 << Planes.BAR - low & entry;
                int landings = atHigh | atLow;
                if (onBar == 1) {
                    landings |= atHigh == 0 ? 0 : (others | atHigh) >>> low;
                    landings |= atLow == 0 ? 0 : (others | atLow) >>> high;
                }
                rolls += (landings & blots) != 0 ? 2 : 0;
            }
            boolean entersHitting = (atHigh & blots) != 0;
            boolean goesOn = atHigh != 0 && onBar < 4 && reach(others | atHigh, high, 4 - onBar, open, blots);
            rolls += entersHitting || goesOn ? 1 : 0;
        }
        return rolls;
    }

    /**
     * Rolls, of 36, with which a lone checker on the bar could not enter against this side's home board.
     *
     * @param planes array that holds the side
     * @param side index of its plane 0
     * @return the square of the number of held home points: 0 to 36
     */
    public static int dancingRolls(int[] planes, int side) {
        int closed = Integer.bitCount(Planes.held(planes, side) & Planes.HOME);
        return closed * closed;
    }

    /**
     * Length of the longest run of held points.
     *
     * @param planes array that holds the side
     * @param side index of its plane 0
     * @return 0 to 7
     */
    public static int longestPrime(int[] planes, int side) {
        int held = Planes.held(planes, side) & Planes.POINTS;
        int two = held & held >>> 1;
        int three = two & two >>> 1;
        int four = three & three >>> 1;
        int five = four & four >>> 1;
        int six = five & five >>> 1;
        int seven = six & six >>> 1;
        return any(held) + any(two) + any(three) + any(four) + any(five) + any(six) + any(seven);
    }

    /**
     * Freedom of the rearmost checker: the pips it can move with a roll, by itself and past the opponent's held points,
     * averaged over the 36 rolls, as a share of the mean roll of 49/6 pips. Points more than 12 pips ahead count as open.
     *
     * @param planes array that holds the position
     * @param side index of the mover's plane 0
     * @param other index of the other side's plane 0
     * @return 0 (locked in) to 1 (no obstacle)
     */
    public static float freedom(int[] planes, int side, int other) {
        int rearmost = Planes.rearmost(planes, side);
        if (rearmost == 0) {
            return 1;
        }
        int held = Planes.mirror(Planes.held(planes, other)) & Planes.POINTS;
        int ahead = Integer.reverse(held << 32 - rearmost);
        return FREEDOM[ahead & FREEDOM.length - 1];
    }

    /** Bit {@code d - 1} of the index says that the point {@code d} pips ahead is held by the opponent. */
    private static float[] freedomTable() {
        float[] table = new float[1 << AHEAD];
        for (int blocked = 0; blocked < table.length; blocked++) {
            int pips = 0;
            for (int high = 1; high <= 6; high++) {
                for (int low = 1; low < high; low++) {
                    pips += 2 * pipsWith(blocked, high, low);
                }
                pips += pipsWithDouble(blocked, high);
            }
            table[blocked] = pips / 294f;
        }
        return table;
    }

    private static boolean open(int blocked, int distance) {
        return distance > AHEAD || (blocked >>> distance - 1 & 1) == 0;
    }

    private static int pipsWith(int blocked, int high, int low) {
        if ((open(blocked, high) || open(blocked, low)) && open(blocked, high + low)) {
            return high + low;
        }
        return open(blocked, high) ? high : open(blocked, low) ? low : 0;
    }

    private static int pipsWithDouble(int blocked, int die) {
        int steps = 0;
        while (steps < 4 && open(blocked, (steps + 1) * die)) {
            steps++;
        }
        return steps * die;
    }
}
