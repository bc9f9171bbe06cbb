package org.pipwright.engine.matchtable;

import java.util.BitSet;

/**
 * The pairs of arrangements that may arise with the second side on roll from some with that side on roll; plays do not
 * depend on the other side.
 */
final class EndingReach {
    private final EndingPlays plays;

    /** By the arrangement of the first side, those of the second; null where there is none. */
    private final BitSet[] seconds;

    /** The same with the first side on roll. */
    private final BitSet[] replies;

    private final BitSet firsts = new BitSet();

    EndingReach(EndingPlays plays, BitSet firsts, BitSet seconds) {
        this.plays = plays;
        this.seconds = new BitSet[plays.index().size()];
        this.replies = new BitSet[this.seconds.length];
        BitSet a = (BitSet) firsts.clone();
        BitSet b = seconds;
        a.clear(0);
        while (!a.isEmpty() && !b.isEmpty()) {
            this.firsts.or(a);
            add(a, b, this.seconds);
            b = plays.after(b);
            add(a, b, replies);
            a = plays.after(a);
        }
    }

    private static void add(BitSet some, BitSet against, BitSet[] all) {
        for (int a = some.nextSetBit(0); a >= 0; a = some.nextSetBit(a + 1)) {
            all[a] = all[a] == null ? new BitSet() : all[a];
            all[a].or(against);
        }
    }

    /** Arrangements of the first side, those with fewer pips first. */
    int[] firsts() {
        return plays.inOrder(firsts);
    }

    /** What the second side can have against one of them; the caller's to change. */
    BitSet seconds(int first) {
        return seconds[first];
    }

    /** What the second side can have after its next roll from there. */
    BitSet replies(int first) {
        return replies[first];
    }
}
