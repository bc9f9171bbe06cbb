package org.pipwright.engine.position;

import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Arrays;
import org.pipwright.engine.PublicApi;

/**
 * A position before a roll: the checkers of the side on roll and of the opponent, each counted from its own home.
 *
 * <p>Immutable and always legal: both sides have the same number of checkers (1 to 15), no point holds checkers of both,
 * and at most one side has borne off all of its checkers.
 */
@PublicApi
public final class Position implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Checkers a side in the full game. */
    public static final int FULL = 15;

    private static final int[] START_COUNTS = startCounts();

    private static final Position START = of(START_COUNTS, START_COUNTS);

    private final int[] planes;

    private Position(int[] planes) {
        this.planes = planes;
    }

    private static int[] startCounts() {
        int[] counts = new int[Planes.PLACES];
        counts[24] = 2;
        counts[13] = 5;
        counts[8] = 3;
        counts[6] = 5;
        return counts;
    }

    /**
     * The starting position of the full game.
     *
     * @return 5 checkers on the 6 point, 3 on the 8, 5 on the 13 and 2 on the 24 point, for both sides
     */
    public static Position start() {
        return START;
    }

    /**
     * The starting position of a game with a given number of checkers: the usual one for 15; for fewer, one checker on
     * each of the own points 24, 23, ... (our own choice, so that small games keep contact; common practice knows none).
     *
     * @param checkers checkers a side, 1 to 15
     * @return the starting position
     * @throws InvalidPositionException if checkers is out of range, or 13 or 14: so long a column would put both sides on one point
     */
    public static Position start(int checkers) {
        if (checkers == FULL) {
            return START;
        }
        if (checkers < 1 || checkers > 12) {
            throw new InvalidPositionException(
                    "no starting position with " + checkers + " checkers a side: use 15, or 1 to 12");
        }
        int[] counts = new int[Planes.PLACES];
        Arrays.fill(counts, 25 - checkers, 25, 1);
        return of(counts, counts);
    }

    /**
     * A position from checker counts.
     *
     * @param me checkers of the side on roll by own place, 26 entries: [0] borne off, [1] to [24] points, [25] bar
     * @param opponent the same for the opponent, counted from the opponent's home
     * @return the position
     * @throws InvalidPositionException if a rule about where checkers can stand is broken; the message says which
     */
    public static Position of(int[] me, int[] opponent) {
        int[] planes = new int[Planes.STRIDE];
        fill(planes, 0, me, "the side on roll");
        fill(planes, Planes.SIDE, opponent, "the opponent");
        Position position = new Position(planes);
        position.checkConsistency();
        return position;
    }

    private static void fill(int[] planes, int at, int[] counts, String who) {
        if (counts.length != Planes.PLACES) {
            throw new InvalidPositionException(
                    "a side needs " + Planes.PLACES + " counts (off, points 1 to 24, bar), not " + counts.length);
        }
        for (int place = 0; place < Planes.PLACES; place++) {
            if (counts[place] < 0 || counts[place] > FULL) {
                throw new InvalidPositionException(
                        who + " has " + counts[place] + " checkers on one place: use 0 to " + FULL);
            }
            for (int k = 0; k < Planes.SIDE; k++) {
                planes[at + k] |= (counts[place] >> k & 1) << place;
            }
        }
    }

    /**
     * A position from bit planes.
     *
     * @param planes array that holds {@value Planes#STRIDE} ints as {@link Planes} describes
     * @param at index of the first
     * @return the position
     * @throws InvalidPositionException if a rule about where checkers can stand is broken
     */
    public static Position ofPlanes(int[] planes, int at) {
        Position position = new Position(Arrays.copyOfRange(planes, at, at + Planes.STRIDE));
        position.checkConsistency();
        return position;
    }

    /**
     * Recomputes everything that must hold of a position.
     *
     * @throws InvalidPositionException if it does not; the message says what is wrong
     */
    public void checkConsistency() {
        int mine = total(0);
        int theirs = total(Planes.SIDE);
        if (mine != theirs) {
            throw new InvalidPositionException("the side on roll has " + mine + " checkers and the opponent " + theirs
                    + ": both need the same number (those borne off counted)");
        }
        if (mine < 1 || mine > FULL) {
            throw new InvalidPositionException("a side has " + mine + " checkers: use 1 to " + FULL);
        }
        int shared = Planes.occupied(planes, 0) & Planes.mirror(Planes.occupied(planes, Planes.SIDE)) & Planes.POINTS;
        if (shared != 0) {
            int point = Integer.numberOfTrailingZeros(shared);
            throw new InvalidPositionException("both sides have checkers on one point: " + point
                    + " of the side on roll is the opponent's " + (25 - point));
        }
        if (borneOff() == mine && opponentBorneOff() == theirs) {
            throw new InvalidPositionException("both sides have borne off every checker: only one side can have won");
        }
    }

    private int total(int side) {
        int all = 0;
        for (int place = 0; place < Planes.PLACES; place++) {
            all += Planes.count(planes, side, place);
        }
        return all;
    }

    /**
     * Checkers of the side on roll on a place.
     *
     * @param place own place, 0 (borne off) to 25 (bar)
     * @return 0 to 15
     */
    public int count(int place) {
        return Planes.count(planes, 0, place);
    }

    /**
     * Checkers of the opponent on a place.
     *
     * @param place place counted from the opponent's home, 0 (borne off) to 25 (bar)
     * @return 0 to 15
     */
    public int opponentCount(int place) {
        return Planes.count(planes, Planes.SIDE, place);
    }

    /**
     * Checkers a side, those borne off included.
     *
     * @return 1 to 15
     */
    public int checkers() {
        return total(0);
    }

    /**
     * Checkers the side on roll has borne off.
     *
     * @return 0 to 15
     */
    public int borneOff() {
        return count(Planes.OFF);
    }

    /**
     * Checkers the opponent has borne off.
     *
     * @return 0 to 15
     */
    public int opponentBorneOff() {
        return opponentCount(Planes.OFF);
    }

    /**
     * Pip count of the side on roll.
     *
     * @return 0 to 375
     */
    public int pips() {
        return Planes.pips(planes, 0);
    }

    /**
     * Pip count of the opponent.
     *
     * @return 0 to 375
     */
    public int opponentPips() {
        return Planes.pips(planes, Planes.SIDE);
    }

    /**
     * Whether some checkers of the two sides still have to pass each other; without contact the game is a race.
     *
     * @return true while hitting or blocking is possible
     */
    public boolean contact() {
        return Planes.contact(planes, 0);
    }

    /**
     * Whether one side has borne off all of its checkers.
     *
     * @return true if no roll follows
     */
    public boolean finished() {
        return (Planes.occupied(planes, 0) & Planes.ON_BOARD) == 0
                || (Planes.occupied(planes, Planes.SIDE) & Planes.ON_BOARD) == 0;
    }

    /**
     * The same position as the opponent sees it, with the opponent on roll.
     *
     * @return the position with sides exchanged
     */
    public Position swapped() {
        int[] other = new int[Planes.STRIDE];
        Planes.copySwapped(planes, 0, other, 0);
        return new Position(other);
    }

    /**
     * Copies the bit planes out, for hot loops.
     *
     * @param target array to write to
     * @param at index of the first of {@value Planes#STRIDE} ints
     */
    public void copyTo(int[] target, int at) {
        System.arraycopy(planes, 0, target, at, Planes.STRIDE);
    }

    /**
     * The bit planes as a fresh array.
     *
     * @return {@value Planes#STRIDE} ints as {@link Planes} describes
     */
    public int[] toPlanes() {
        return planes.clone();
    }

    /** What is written in place of a position, so that one that is read has been checked. */
    private record Written(int[] planes) implements Serializable {
        private Object readResolve() {
            return ofPlanes(planes, 0);
        }
    }

    private Object writeReplace() {
        return new Written(planes);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("a position is written by its planes");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Position && Arrays.equals(planes, ((Position) other).planes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(planes);
    }

    /** The canonical text form, as {@link PositionText#print} gives it. */
    @Override
    public String toString() {
        return PositionText.print(this);
    }
}
