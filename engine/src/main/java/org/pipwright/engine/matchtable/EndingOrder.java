package org.pipwright.engine.matchtable;

import java.util.concurrent.atomic.AtomicIntegerArray;
import org.pipwright.engine.roll.Roll;

/**
 * Which arrangements of a side's last checkers are at least as good as which, at any score, with any cube and whatever the
 * other side has. One is, if of every roll it can make something that is at least as good as each that the other can make
 * of it; no checker left is the best of all. For without contact a side can then follow every play of the worse one with
 * one as good, roll by roll, and all that cubes can be worth rises with what rolls leave. Where neither is proved to be
 * as good as the other, both have to be tried. Shared by threads, which may prove the same twice.
 */
final class EndingOrder {
    private static final int YES = 1;
    private static final int NO = 2;
    private static final int PER_INT = 16;

    /** Means this close are the same but for rounding. */
    private static final double SAME = 1e-9;

    private final EndingPlays plays;
    private final int size;

    /** Two bits a pair: 0 is not known yet. */
    private final AtomicIntegerArray known;

    EndingOrder(EndingPlays plays) {
        this.plays = plays;
        size = plays.index().size();
        known = new AtomicIntegerArray(size * size / PER_INT + 1);
    }

    /** Whether an arrangement is proved to be at least as good as another. */
    boolean atLeast(int one, int other) {
        if (one == other || one == 0) {
            return true;
        }
        if (other == 0) {
            return false;
        }
        int pair = one * size + other;
        int shift = 2 * (pair % PER_INT);
        int answer = known.get(pair / PER_INT) >>> shift & 3;
        if (answer == 0) {
            answer = follows(plays.of(one), plays.of(other)) ? YES : NO;
            int bits = answer << shift;
            known.accumulateAndGet(pair / PER_INT, bits, (before, more) -> before | more);
        }
        return answer == YES;
    }

    private boolean follows(EndingRolls one, EndingRolls other) {
        // What is as good whatever the other side does needs no more rolls in the mean; most questions end here.
        if (one.mean() > other.mean() + SAME) {
            return false;
        }
        int[][] ones = one.byRoll();
        int[][] others = other.byRoll();
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
