package org.pipwright.engine.play;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;

/**
 * All distinct positions that one roll can lead to, under the full rules: checkers on the bar enter first; both dice are
 * played if any order allows it, else one, the larger if either could be; doubles are played up to four times; a checker
 * is borne off by its exact number, or from the highest occupied point by a larger one, once all are home.
 *
 * <p>Works on bit planes in preallocated buffers and allocates nothing. One instance serves one thread. Results stay
 * valid until the next call.
 */
public final class PlayGenerator {
    /**
     * Upper bound on distinct results: doubles choose at most four sources with repetition from 25 places, C(28,4); with
     * 15 checkers the real maximum is far lower.
     */
    private static final int CAPACITY = 20_475;

    /** Hash slots for the results of a roll that is no double: at most 2 * 25 * 25 insertions are tried. */
    private static final int SLOTS = 2048;

    private static final int BAR_BIT = 1 << Planes.BAR;

    private static final int OUTSIDE_HOME = Planes.ON_BOARD & ~Planes.HOME;

    private int[] results = new int[256 * Planes.STRIDE];
    private int[] hitSets = new int[256];
    private int size;

    private final int[] slots = new int[SLOTS];
    private int stamp;

    /** Opponent's held points and blots in the mover's numbering; both stay put while one roll is played. */
    private int blocked;

    private int blots;
    private final int[] opponent = new int[Planes.SIDE];

    private int deepest;

    /** A generator for one thread. */
    public PlayGenerator() {}

    /**
     * Generates the results of a roll.
     *
     * @param planes array that holds the position, as {@link Planes} describes
     * @param at index of its first plane
     * @param high one die, 1 to 6
     * @param low the other die, 1 to 6, at most high
     * @return number of distinct results; if no checker can move, 1: the position itself
     */
    public int generate(int[] planes, int at, int high, int low) {
        start(planes, at);
        int p0 = planes[at];
        int p1 = planes[at + 1];
        int p2 = planes[at + 2];
        int p3 = planes[at + 3];
        if (high == low) {
            deepest = 0;
            doubles(p0, p1, p2, p3, 0, high, 0, BAR_BIT << 1);
        } else {
            twoDice(p0, p1, p2, p3, high, low);
        }
        if (size == 0) {
            emit(p0, p1, p2, p3, 0);
        }
        writeOpponents();
        return size;
    }

    private void start(int[] planes, int at) {
        size = 0;
        System.arraycopy(planes, at + Planes.SIDE, opponent, 0, Planes.SIDE);
        int held = Planes.held(opponent, 0);
        blocked = Planes.mirror(held) & Planes.POINTS;
        blots = Planes.mirror(opponent[0] & ~held) & Planes.POINTS;
    }

    /**
     * The results of the last call.
     *
     * @return array with {@value Planes#STRIDE} ints a result, from the mover's side (the mover's planes first); only the
     *     first size() results are valid, and the array may be another one after the next call
     */
    public int[] results() {
        return results;
    }

    /**
     * Number of distinct results of the last call.
     *
     * @return at least 1
     */
    public int size() {
        return size;
    }

    /** Places from which a die can be played. */
    private int sources(int occupied, int die) {
        int candidates = occupied & Planes.ON_BOARD;
        if ((candidates & BAR_BIT) != 0) {
            candidates = BAR_BIT;
        }
        int movable = candidates & ~(blocked << die) & -1 << die + 1;
        if ((candidates & OUTSIDE_HOME) == 0) {
            movable |= candidates & 1 << die;
            if (candidates >>> die == 0) {
                movable |= Integer.highestOneBit(candidates);
            }
        }
        return movable;
    }

    /** Where a die takes a checker, as a bit; too large a die bears it off. */
    private static int target(int sourceBit, int die) {
        int shifted = sourceBit >>> die;
        return shifted == 0 ? 1 : shifted;
    }

    /**
     * Plays a double, sources from the highest down: any legal sequence can be put in that order, and sets of sources
     * differ exactly when results differ, so no duplicates arise. Long, because the ripple moves are kept in registers.
     */
    private void doubles(int p0, int p1, int p2, int p3, int hits, int die, int depth, int limit) {
        int movable = depth == 4 ? 0 : sources(p0 | p1 | p2 | p3, die) & limit - 1;
        if (movable == 0) {
            if (depth > deepest) {
                deepest = depth;
                size = 0;
            }
            if (depth == deepest && depth > 0) {
                emit(p0, p1, p2, p3, hits);
            }
            return;
        }
        while (movable != 0) {
            int from = Integer.highestOneBit(movable);
            movable ^= from;
            int to = target(from, die);
            int q0 = p0 ^ from;
            int ripple = from & q0;
            int q1 = p1 ^ ripple;
            ripple &= q1;
            int q2 = p2 ^ ripple;
            ripple &= q2;
            int q3 = p3 ^ ripple;
            q0 ^= to;
            ripple = to & ~q0;
            q1 ^= ripple;
            ripple &= ~q1;
            q2 ^= ripple;
            ripple &= ~q2;
            q3 ^= ripple;
            doubles(q0, q1, q2, q3, hits | to & blots, die, depth + 1, from << 1);
        }
    }

    private void twoDice(int p0, int p1, int p2, int p3, int high, int low) {
        nextStamp();
        int firstHigh = sources(p0 | p1 | p2 | p3, high);
        int firstLow = sources(p0 | p1 | p2 | p3, low);
        pairs(p0, p1, p2, p3, firstHigh, high, low);
        pairs(p0, p1, p2, p3, firstLow, low, high);
        if (size == 0) {
            if (firstHigh != 0) {
                seconds(p0, p1, p2, p3, 0, firstHigh, high);
            } else {
                seconds(p0, p1, p2, p3, 0, firstLow, low);
            }
        }
    }

    /** Plays one die from each source, then the other die: {@link #seconds}. */
    private void pairs(int p0, int p1, int p2, int p3, int firsts, int die, int then) {
        for (int movable = firsts; movable != 0; movable &= movable - 1) {
            int from = movable & -movable;
            int to = target(from, die);
            int q0 = p0 ^ from;
            int ripple = from & q0;
            int q1 = p1 ^ ripple;
            ripple &= q1;
            int q2 = p2 ^ ripple;
            ripple &= q2;
            int q3 = p3 ^ ripple;
            q0 ^= to;
            ripple = to & ~q0;
            q1 ^= ripple;
            ripple &= ~q1;
            q2 ^= ripple;
            ripple &= ~q2;
            q3 ^= ripple;
            seconds(q0, q1, q2, q3, to & blots, sources(q0 | q1 | q2 | q3, then), then);
        }
    }

    /** Plays the last die from each source and keeps what is new. */
    private void seconds(int p0, int p1, int p2, int p3, int hits, int seconds, int die) {
        for (int movable = seconds; movable != 0; movable &= movable - 1) {
            int from = movable & -movable;
            int to = target(from, die);
            int q0 = p0 ^ from;
            int ripple = from & q0;
            int q1 = p1 ^ ripple;
            ripple &= q1;
            int q2 = p2 ^ ripple;
            ripple &= q2;
            int q3 = p3 ^ ripple;
            q0 ^= to;
            ripple = to & ~q0;
            q1 ^= ripple;
            ripple &= ~q1;
            q2 ^= ripple;
            ripple &= ~q2;
            q3 ^= ripple;
            emitOnce(q0, q1, q2, q3, hits | to & blots);
        }
    }

    private void nextStamp() {
        stamp += CAPACITY;
        if (stamp < 0 || stamp > Integer.MAX_VALUE - CAPACITY) {
            Arrays.fill(slots, 0);
            stamp = CAPACITY;
        }
    }

    /**
     * Keeps a result unless an equal one is there: open addressing over the mover's planes and the hits.
     *
     * <p>The hits are compared as well as hashed, though it has yet to matter: equal planes with other hits differ only in
     * where a checker paused, and of all such pairs the hash puts none closer than 41 slots, so that a probe would have
     * to walk through as many taken ones. It would be needed with another hash or a fuller table.
     */
    private void emitOnce(int p0, int p1, int p2, int p3, int hits) {
        int hash = (p0 * 0x9E3779B1 ^ p1 * 0x85EBCA6B ^ p2 * 0xC2B2AE35 ^ p3) + hits * 0x27D4EB2F;
        int slot = hash * 0x9E3779B1 >>> 21;
        for (; slots[slot] >= stamp; slot = slot + 1 & SLOTS - 1) {
            int known = slots[slot] - stamp;
            int base = known * Planes.STRIDE;
            if (results[base] == p0
                    && results[base + 1] == p1
                    && results[base + 2] == p2
                    && results[base + 3] == p3
                    && hitSets[known] == hits) {
                return;
            }
        }
        slots[slot] = stamp + size;
        emit(p0, p1, p2, p3, hits);
    }

    private void emit(int p0, int p1, int p2, int p3, int hits) {
        if (size == hitSets.length) {
            grow();
        }
        int base = size * Planes.STRIDE;
        results[base] = p0;
        results[base + 1] = p1;
        results[base + 2] = p2;
        results[base + 3] = p3;
        hitSets[size++] = hits;
    }

    private void grow() {
        results = Arrays.copyOf(results, 2 * results.length);
        hitSets = Arrays.copyOf(hitSets, 2 * hitSets.length);
    }

    /** Writes the opponent's half of every result: hit blots go to the bar. */
    private void writeOpponents() {
        for (int i = 0; i < size; i++) {
            int base = i * Planes.STRIDE + Planes.SIDE;
            System.arraycopy(opponent, 0, results, base, Planes.SIDE);
            int hits = hitSets[i];
            if (hits != 0) {
                results[base] &= ~Planes.mirror(hits);
                for (int n = Integer.bitCount(hits); n > 0; n--) {
                    Planes.add(results, base, Planes.BAR);
                }
            }
        }
    }
}
