package org.pipwright.cli.desk;

import java.util.Optional;
import org.pipwright.engine.position.InvalidPositionException;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

/**
 * The checkers on a board that is being set up: a position, or the empty board on which one begins. Both sides always have
 * the same number, and never stand on one point. Immutable.
 */
final class Layout {
    private static final String EMPTY = "off / off";

    private final int checkers;
    private final int[] mine;
    private final int[] theirs;

    /** Made when it is first asked for: a page asks for that of one layout in dozens of addresses. */
    private String text;

    private Layout(int checkers, int[] mine, int[] theirs) {
        this.checkers = checkers;
        this.mine = mine;
        this.theirs = theirs;
    }

    static Layout of(Position position) {
        return new Layout(position.checkers(), counts(position), counts(position.swapped()));
    }

    private static int[] counts(Position side) {
        int[] counts = new int[Planes.PLACES];
        for (int place = 0; place < counts.length; place++) {
            counts[place] = side.count(place);
        }
        return counts;
    }

    /** All checkers off. */
    static Layout empty() {
        int[] off = new int[Planes.PLACES];
        off[Planes.OFF] = Position.FULL;
        return new Layout(Position.FULL, off, off.clone());
    }

    /**
     * Reads a position, or the empty board.
     *
     * @throws InvalidPositionException if it is neither; the message says where and why
     */
    static Layout parse(String text) {
        return text.strip().equalsIgnoreCase(EMPTY) ? empty() : of(PositionText.parse(text));
    }

    /** What {@link #parse} reads back. */
    String text() {
        if (text == null) {
            text = position().map(PositionText::print).orElse(EMPTY);
        }
        return text;
    }

    /** The position; none yet while no checker stands on the board. */
    Optional<Position> position() {
        return mine[Planes.OFF] == checkers && theirs[Planes.OFF] == checkers
                ? Optional.empty()
                : Optional.of(Position.of(mine, theirs));
    }

    /** Checkers of a side on a place; on a bar or in a tray those of its owner only. */
    int count(Place place, boolean mySide) {
        boolean none = !place.point() && place.theirs() == mySide;
        return none ? 0 : (mySide ? mine : theirs)[place.seen(mySide)];
    }

    /** Checkers of both sides on a place. */
    int count(Place place) {
        return count(place, true) + count(place, false);
    }

    /** Checkers that a side has off the board. */
    int off(boolean mySide) {
        return (mySide ? mine : theirs)[Planes.OFF];
    }

    /** The same seen from the opponent's side. */
    Layout swapped() {
        return new Layout(checkers, theirs, mine);
    }

    /**
     * One checker moved, by whoever stands there. On bars and trays it goes to its own side's.
     *
     * @throws RefusedException if none is there, or the opponent stands where it should go
     */
    Layout moved(Place from, Place to) {
        if (count(from) == 0) {
            throw new RefusedException("there is no checker on " + from.words());
        }
        boolean mySide = count(from, true) > 0;
        if (to.point() && count(to, !mySide) > 0) {
            throw new RefusedException(
                    "the other side holds " + to.words() + ": a point holds checkers of one side only");
        }
        int[] counts = (mySide ? mine : theirs).clone();
        counts[from.seen(mySide)]--;
        counts[to.seen(mySide)]++;
        return with(mySide, counts);
    }

    /**
     * A place with so many checkers; what is missing comes out of the tray, the rest goes there.
     *
     * @param place a point or a bar
     * @param number how many of one side; on a point that leaves none of the other's
     * @throws RefusedException if there are not so many, or the other side stands there
     */
    Layout with(Place place, boolean mySide, int number) {
        int[] counts = (mySide ? mine : theirs).clone();
        int at = place.seen(mySide);
        int there = counts[at] + counts[Planes.OFF];
        if (number > there) {
            throw new RefusedException("for " + place.words() + " there are only " + there
                    + (mySide ? " of your checkers" : " of the opponent's checkers") + ": a side has " + checkers);
        }
        if (place.point() && number > 0 && count(place, !mySide) > 0) {
            throw new RefusedException(
                    "the other side holds " + place.words() + ": a point holds checkers of one side only");
        }
        counts[Planes.OFF] = there - number;
        counts[at] = number;
        return with(mySide, counts);
    }

    private Layout with(boolean mySide, int[] counts) {
        return new Layout(checkers, mySide ? counts : mine, mySide ? theirs : counts);
    }
}
