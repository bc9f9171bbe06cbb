package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.cli.picture.View;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * A position as a board of characters: two rows of twelve points with a count and a sign for each, the bar between the
 * halves, points numbered from the side on roll, whose home is at the lower right unless the view says otherwise.
 */
public final class BoardText {
    private static final int HALF = 6;

    private static final int POINTS = 24;

    private final Position position;
    private final String mine;
    private final String theirs;
    private final String empty;
    private final String edge;
    private final boolean waiting;
    private final View view;

    private BoardText(Position position, boolean waiting, View view, boolean unicode) {
        this.position = position;
        this.view = view;
        this.waiting = waiting;
        mine = unicode ? "●" : "#";
        theirs = unicode ? "○" : "o";
        empty = unicode ? "·" : ".";
        edge = unicode ? "│" : "|";
    }

    /**
     * Prints a position.
     *
     * @param position any position
     * @param unicode whether {@code ● ○} can be printed; else {@code # o} stand for them
     * @param out where to
     */
    public static void write(Position position, boolean unicode, PrintWriter out) {
        write(position, View.USUAL, unicode, out);
    }

    /** Prints a position as a view shows it. */
    static void write(Position position, View view, boolean unicode, PrintWriter out) {
        new BoardText(position, false, view, unicode).write(out);
    }

    /** Prints a position in which the opponent is on roll, seen from the side that waits. */
    static void writeWaiting(Position position, View view, boolean unicode, PrintWriter out) {
        new BoardText(position, true, view, unicode).write(out);
    }

    private void write(PrintWriter out) {
        out.println(position);
        out.println();
        int upper = view.homeLeft() ? POINTS : 13;
        int lower = view.homeLeft() ? 1 : 12;
        int step = view.homeLeft() ? -1 : 1;
        line(out, numbers(upper, step), "");
        line(out, checkers(upper, step, bar(position.opponentCount(Planes.BAR), theirs)), opponent());
        line(out, checkers(lower, -step, bar(position.count(Planes.BAR), mine)), onRoll());
        line(out, numbers(lower, -step), "");
    }

    private static void line(PrintWriter out, String board, String side) {
        out.println((board + "   " + side).stripTrailing());
    }

    private String onRoll() {
        return side(mine, waiting ? "you     " : "on roll ", position);
    }

    private String opponent() {
        return side(theirs, waiting ? "on roll " : "opponent", position.swapped());
    }

    private String side(String sign, String who, Position seen) {
        String pips = view.pips() ? Numbers.right(seen.pips(), 3) + " pips, " : "";
        return sign + " " + who + "  " + pips + seen.borneOff() + " off";
    }

    private String numbers(int first, int step) {
        return row(first, step, "   ", point -> Numbers.right(point, 2) + " ");
    }

    private String checkers(int first, int step, String bar) {
        return row(first, step, bar, this::point);
    }

    private String point(int point) {
        int count = position.count(point);
        int other = position.opponentCount(POINTS + 1 - point);
        return count + other == 0 ? " " + empty + " " : Numbers.right(count + other, 2) + (count > 0 ? mine : theirs);
    }

    private static String bar(int count, String sign) {
        return count == 0 ? "   " : Numbers.right(count, 2) + sign;
    }

    /** What a cell of three characters holds. */
    @FunctionalInterface
    private interface Cell {
        String at(int point);
    }

    private String row(int first, int step, String bar, Cell cell) {
        StringBuilder row = new StringBuilder();
        for (int i = 0; i < 2 * HALF; i++) {
            if (i == HALF) {
                row.append(' ').append(edge).append(bar).append(' ').append(edge);
            }
            row.append(' ').append(cell.at(first + i * step));
        }
        return row.toString();
    }
}
