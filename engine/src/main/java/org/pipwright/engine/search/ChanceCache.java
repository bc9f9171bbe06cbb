package org.pipwright.engine.search;

import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.concurrent.atomic.LongAdder;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * Remembers the chances of positions with lookahead 1 and more. Bounded, shared by threads, without locks: each slot holds
 * an immutable entry with the whole position, so a hit is never another position's.
 *
 * <p>What is kept is an exact function of position and lookahead, so hits change no result, only the time; therefore one
 * cache serves one net and one set of settings only. Two slots belong together: one for the entry with the larger
 * lookahead, one for the newest other.
 */
public final class ChanceCache {
    private final AtomicReferenceArray<Entry> slots;
    private final LongAdder lookUps = new LongAdder();
    private final LongAdder hits = new LongAdder();

    private static final class Entry {
        private final long a;
        private final long b;
        private final long c;
        private final long d;
        private final int lookahead;
        private final float[] chances = new float[Outcomes.COUNT];

        Entry(int[] planes, int at, int lookahead, float[] from, int fromAt) {
            a = pair(planes, at);
            b = pair(planes, at + 2);
            c = pair(planes, at + 4);
            d = pair(planes, at + 6);
            this.lookahead = lookahead;
            System.arraycopy(from, fromAt, chances, 0, Outcomes.COUNT);
        }

        boolean is(int[] planes, int at, int wanted) {
            return lookahead == wanted
                    && a == pair(planes, at)
                    && b == pair(planes, at + 2)
                    && c == pair(planes, at + 4)
                    && d == pair(planes, at + 6);
        }
    }

    /**
     * An empty cache.
     *
     * @param bits base-2 logarithm of the number of entries, 1 to 24; an entry takes about 100 bytes
     */
    public ChanceCache(int bits) {
        if (bits < 1 || bits > 24) {
            throw new IllegalArgumentException("a cache of 2^" + bits + " entries: use 1 to 24 bits");
        }
        slots = new AtomicReferenceArray<>(1 << bits);
    }

    private static long pair(int[] planes, int at) {
        return (long) planes[at] << 32 | planes[at + 1] & 0xFFFF_FFFFL;
    }

    /** First of the two slots, by multiply and shift with the odd constants of SplitMix64. */
    private int slot(int[] planes, int at, int lookahead) {
        long hash = lookahead;
        for (int k = at; k < at + 8; k += 2) {
            hash = (hash ^ pair(planes, k)) * 0xBF58476D1CE4E5B9L;
            hash ^= hash >>> 29;
        }
        hash *= 0x94D049BB133111EBL;
        return (int) (hash >>> 33) & slots.length() - 2;
    }

    boolean find(int[] planes, int at, int lookahead, float[] out, int outAt) {
        lookUps.increment();
        int slot = slot(planes, at, lookahead);
        for (int i = slot; i < slot + 2; i++) {
            Entry entry = slots.get(i);
            if (entry != null && entry.is(planes, at, lookahead)) {
                System.arraycopy(entry.chances, 0, out, outAt, Outcomes.COUNT);
                hits.increment();
                return true;
            }
        }
        return false;
    }

    void store(int[] planes, int at, int lookahead, float[] chances, int chancesAt) {
        int slot = slot(planes, at, lookahead);
        Entry entry = new Entry(planes, at, lookahead, chances, chancesAt);
        Entry deeper = slots.get(slot);
        if (deeper == null || deeper.lookahead <= lookahead) {
            slots.set(slot, entry);
            entry = deeper;
        }
        if (entry != null) {
            slots.set(slot + 1, entry);
        }
    }

    /**
     * Number of look-ups so far.
     *
     * @return at least 0
     */
    public long lookUps() {
        return lookUps.sum();
    }

    /**
     * Share of look-ups that found their position.
     *
     * @return 0 to 1; 0 before the first
     */
    public double hitRate() {
        long tries = lookUps.sum();
        return tries == 0 ? 0 : (double) hits.sum() / tries;
    }
}
