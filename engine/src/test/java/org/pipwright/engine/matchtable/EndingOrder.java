package org.pipwright.engine.matchtable;

import org.pipwright.engine.roll.Roll;

/**
 * Which arrangements of a side's last checkers are at least as good as which, at any score, with any cube and whatever the
 * other side has. One is, if of every roll it can make something that is at least as good as each that the other can make
 * of it; no checker left is the best of all. For without contact a side can then follow every play of the worse one with
 * one as good, roll by roll, and all that cubes can be worth rises with what rolls leave. Where neither is proved to be
 * as good as the other, both have to be tried.
 */
final class EndingOrder {
    private static final byte YES = 1;
    private static final byte NO = 2;

    /** Means this close are the same but for rounding. */
    private static final double SAME = 1e-9;

    private final ProvenPlays plays;

    /** 0 is not known yet. */
    private final byte[][] known;

    EndingOrder(ProvenPlays plays, int size) {
        this.plays = plays;
        known = new byte[size][size];
    }

    /** Whether an arrangement is proved to be at least as good as another. */
    boolean atLeast(int one, int other) {
        if (one == other || one == 0) {
            return true;
        }
        if (other == 0) {
            return false;
        }
        if (known[one][other] == 0) {
            known[one][other] = follows(one, other) ? YES : NO;
        }
        return known[one][other] == YES;
    }

    private boolean follows(int one, int other) {
        // What is as good whatever the other side does needs no more rolls in the mean; most questions end here.
        if (plays.mean(one) > plays.mean(other) + SAME) {
            return false;
        }
        int[][] ones = plays.of(one);
        int[][] others = plays.of(other);
        for (int roll = Roll.COUNT - 1; roll >= 0; roll--) {
            for (int result : others[roll]) {
                if (!anyAtLeast(ones[roll], result)) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean anyAtLeast(int[] ones, int other) {
        for (int one : ones) {
            if (atLeast(one, other)) {
                return true;
            }
        }
        return false;
    }
}
