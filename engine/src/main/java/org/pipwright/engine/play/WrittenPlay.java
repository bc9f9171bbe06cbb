package org.pipwright.engine.play;

import java.util.List;

/**
 * A play as somebody wrote it, not yet known to be legal.
 *
 * @param hops moves of one checker by one or more dice
 * @param stars places where it claims to hit, one bit each
 */
record WrittenPlay(List<Hop> hops, int stars) {
    /** From one own place down to another. */
    record Hop(int from, int to) {
        Hop {
            if (from <= to) {
                throw new IllegalPlayException(
                        text(from, to) + " goes the wrong way: a checker moves to a lower point of its own side");
            }
        }

        private static String text(int from, int to) {
            return PlayPrinter.place(from) + "/" + PlayPrinter.place(to);
        }

        @Override
        public String toString() {
            return text(from, to);
        }
    }

    /** The places where hops end, one bit each. */
    int stops() {
        return hops.stream().mapToInt(hop -> 1 << hop.to()).reduce(0, (a, b) -> a | b);
    }
}
