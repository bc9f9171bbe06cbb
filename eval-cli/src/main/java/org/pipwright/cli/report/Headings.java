package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.position.Position;

/** What stands above an answer: the position, and how many checkers are off, which its text leaves to be counted. */
final class Headings {
    private Headings() {}

    /**
     * Prints the position and what is asked of it; if a checker is off, the checkers of both sides in a line of their own.
     *
     * @param position seen from the side on roll
     * @param asked such as {@code to play 3-1}
     */
    static void write(Position position, String asked, PrintWriter out) {
        out.println(position + "  " + asked);
        if (position.borneOff() > 0 || position.opponentBorneOff() > 0) {
            out.println("side on roll: " + side(position) + "; opponent: " + side(position.swapped()));
        }
    }

    private static String side(Position side) {
        int there = side.checkers() - side.borneOff();
        return there + (there == 1 ? " checker, " : " checkers, ") + side.borneOff() + " off";
    }
}
