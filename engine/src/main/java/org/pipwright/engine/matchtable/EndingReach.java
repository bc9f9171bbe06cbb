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

    private final BitSet firsts = new BitSet();

    EndingReach(EndingPlays plays, BitSet firsts, BitSet seconds) {
        this.plays = plays;
        this.seconds = new BitSet[plays.index().size()];
        BitSet a = (BitSet) firsts.clone();
        BitSet b = seconds;
        a.clear(0);
        while (!a.isEmpty() && !b.isEmpty()) {
            this.firsts.or(a);
            add(a, b);
            b = plays.after(b);
            a = plays.after(a);
        }
    }

    private void add(BitSet some, BitSet against) {
        for (int a = some.nextSetBit(0); a >= 0; a = some.nextSetBit(a + 1)) {
            seconds[a] = seconds[a] == null ? new BitSet() : seconds[a];
            seconds[a].or(against);
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
}
