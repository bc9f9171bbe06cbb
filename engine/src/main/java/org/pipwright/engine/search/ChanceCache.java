package org.pipwright.engine.search;

import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.concurrent.atomic.LongAdder;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;

/**
 * Remembers the chances of positions with lookahead 1 and more, and what rolling is worth there with some cubes. Bounded, shared by threads, without locks: each slot holds
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

    /** Numbers of columns, from 1; columns without a cube are number 0. */
    private final Map<Object, Integer> numbers = new ConcurrentHashMap<>();

    private final AtomicInteger last = new AtomicInteger();

    private static final class Entry {
        private static final double[] NOTHING = {};

        private final long a;
        private final long b;
        private final long c;
        private final long d;
        private final int lookahead;
        private final int columns;
        private final float[] chances = new float[Outcomes.COUNT];
        private final double[] rolling;

        /** What batch position k has been found to be. */
        Entry(Batch from, int k, int lookahead, int columns) {
            int at = k * Planes.STRIDE;
            a = pair(from.planes, at);
            b = pair(from.planes, at + 2);
            c = pair(from.planes, at + 4);
            d = pair(from.planes, at + 6);
            this.lookahead = lookahead;
            this.columns = columns;
            System.arraycopy(from.chances, k * Outcomes.COUNT, chances, 0, Outcomes.COUNT);
            rolling =
                    from.cubes == 0 ? NOTHING : Arrays.copyOfRange(from.rolling, k * from.cubes, (k + 1) * from.cubes);
        }

        boolean is(int[] planes, int at, int wanted, int wantedColumns) {
            return lookahead == wanted
                    && columns == wantedColumns
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

    /** The number of columns with a cube, the same whenever it is asked for by an equal key. */
    int number(Object key) {
        return numbers.computeIfAbsent(key, unknown -> last.incrementAndGet());
    }

    /** First of the two slots, by multiply and shift with the odd constants of SplitMix64. */
    private int slot(int[] planes, int at, int lookahead, int columns) {
        long hash = lookahead + ((long) columns << 3);
        for (int k = at; k < at + 8; k += 2) {
            hash = (hash ^ pair(planes, k)) * 0xBF58476D1CE4E5B9L;
            hash ^= hash >>> 29;
        }
        hash *= 0x94D049BB133111EBL;
        return (int) (hash >>> 33) & slots.length() - 2;
    }

    /** Writes what is remembered of position k of a batch; returns whether anything is. */
    boolean find(Batch batch, int k, int lookahead, int columns) {
        lookUps.increment();
        int at = k * Planes.STRIDE;
        int slot = slot(batch.planes, at, lookahead, columns);
        for (int i = slot; i < slot + 2; i++) {
            Entry entry = slots.get(i);
            if (entry != null && entry.is(batch.planes, at, lookahead, columns)) {
                System.arraycopy(entry.chances, 0, batch.chances, k * Outcomes.COUNT, Outcomes.COUNT);
                System.arraycopy(entry.rolling, 0, batch.rolling, k * batch.cubes, entry.rolling.length);
                hits.increment();
                return true;
            }
        }
        return false;
    }

    /** Remembers position k of a batch. */
    void store(Batch batch, int k, int lookahead, int columns) {
        int slot = slot(batch.planes, k * Planes.STRIDE, lookahead, columns);
        Entry entry = new Entry(batch, k, lookahead, columns);
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
