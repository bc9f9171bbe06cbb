package org.pipwright.engine.naive;

import java.util.Arrays;

/**
 * A board as plain counts, with the rules for one step of one checker written from the rules text. Immutable. Shares no
 * code with the bit planes: it is what they are checked against.
 *
 * <p>Places are each side's own: 1 is the ace point, 24 the point furthest from home, 25 the bar, 0 borne off. The
 * mover's place p and the other side's place 25 - p are the same point.
 */
public final class NaiveBoard {
    public static final int OFF = 0;
    public static final int BAR = 25;
    public static final int PLACES = 26;

    private final int[] mine;
    private final int[] theirs;
    private final int hash;

    private NaiveBoard(int[] mine, int[] theirs, int hash) {
        this.mine = mine;
        this.theirs = theirs;
        this.hash = hash;
    }

    private NaiveBoard(int[] mine, int[] theirs) {
        this(mine, theirs, hashOf(mine, theirs));
    }

    /** A board from counts by own place, 26 entries a side. */
    public static NaiveBoard of(int[] mine, int[] theirs) {
        return new NaiveBoard(mine.clone(), theirs.clone());
    }

    /** Reads the ints of a bit plane position: digit k of the count on place p is bit p of plane k. */
    public static NaiveBoard ofPlanes(int[] planes, int at) {
        return new NaiveBoard(side(planes, at), side(planes, at + 4));
    }

    private static int[] side(int[] planes, int at) {
        int[] counts = new int[PLACES];
        for (int k = 0; k < 4; k++) {
            for (int rest = planes[at + k]; rest != 0; rest &= rest - 1) {
                counts[Integer.numberOfTrailingZeros(rest)] += 1 << k;
            }
        }
        return counts;
    }

    /** The ints of the bit plane form: the mover's four planes, then the other side's. */
    public int[] toPlanes() {
        int[] planes = new int[8];
        for (int k = 0; k < 4; k++) {
            for (int place = 0; place < PLACES; place++) {
                planes[k] |= (mine[place] >> k & 1) << place;
                planes[4 + k] |= (theirs[place] >> k & 1) << place;
            }
        }
        return planes;
    }

    /** Sum of a weight per checker, so that {@link #moved} can carry it along. */
    private static int hashOf(int[] mine, int[] theirs) {
        int hash = 0;
        for (int place = 0; place < PLACES; place++) {
            hash += mine[place] * weight(place) + theirs[place] * weight(place + PLACES);
        }
        return hash;
    }

    private static int weight(int index) {
        int mixed = (index + 1) * 0x9E3779B1;
        mixed = (mixed ^ mixed >>> 15) * 0x85EBCA6B;
        return mixed ^ mixed >>> 13;
    }

    /** The mover's checkers on an own place. */
    public int mine(int place) {
        return mine[place];
    }

    /** The other side's checkers on a place of its own. */
    public int theirs(int place) {
        return theirs[place];
    }

    /** The same board with the other side as the mover. */
    public NaiveBoard swapped() {
        return new NaiveBoard(theirs, mine);
    }

    /** Whether all of the mover's checkers are borne off or on its points 1 to 6. */
    public boolean allHome() {
        return rearmost() <= 6;
    }

    /** The mover's highest occupied place: 25 for the bar, 0 if every checker is off. */
    public int rearmost() {
        int place = BAR;
        while (place > OFF && mine[place] == 0) {
            place--;
        }
        return place;
    }

    /** The board after the mover plays a die with one checker from a place, or null if the rules forbid it. */
    public NaiveBoard step(int from, int die) {
        if (from == OFF || mine[from] == 0) {
            return null;
        }
        if (mine[BAR] > 0 && from != BAR) {
            return null;
        }
        int to = from - die;
        if (to >= 1) {
            return theirs[25 - to] >= 2 ? null : moved(from, to);
        }
        if (!allHome()) {
            return null;
        }
        boolean exact = to == 0;
        return exact || rearmost() == from ? moved(from, OFF) : null;
    }

    private NaiveBoard moved(int from, int to) {
        int[] me = mine.clone();
        me[from]--;
        me[to]++;
        int[] them = theirs;
        int newHash = hash - weight(from) + weight(to);
        if (to != OFF && theirs[25 - to] == 1) {
            them = theirs.clone();
            them[25 - to] = 0;
            them[BAR]++;
            newHash += weight(BAR + PLACES) - weight(25 - to + PLACES);
        }
        return new NaiveBoard(me, them, newHash);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof NaiveBoard
                && hash == ((NaiveBoard) other).hash
                && Arrays.equals(mine, ((NaiveBoard) other).mine)
                && Arrays.equals(theirs, ((NaiveBoard) other).theirs);
    }

    @Override
    public int hashCode() {
        return hash;
    }

    /** Both sides as place:count lists, for failure messages. */
    @Override
    public String toString() {
        return words(mine) + " / " + words(theirs);
    }

    private static String words(int[] counts) {
        StringBuilder text = new StringBuilder();
        for (int place = 0; place < PLACES; place++) {
            if (counts[place] > 0) {
                text.append(text.length() == 0 ? "" : " ").append(counts[place]).append('@');
                text.append(place == OFF ? "off" : place == BAR ? "bar" : Integer.toString(place));
            }
        }
        return text.toString();
    }
}
