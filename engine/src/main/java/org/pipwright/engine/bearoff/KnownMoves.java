package org.pipwright.engine.bearoff;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;

/**
 * What sides that played alone have been moved to, the latest of them: paths of a simulation, and those of the plays of a roll,
 * meet again and again. Each entry holds the whole side, so a hit is never another's. Serves one thread.
 */
final class KnownMoves {
    private static final int BITS = 14;

    /** The side before, what is moved and what for, the side after. */
    private static final int ENTRY = Planes.SIDE + 1 + Planes.SIDE;

    private final int[] entries = new int[ENTRY << BITS];

    /** Moves a side as before; returns whether it is known how. */
    boolean move(int[] planes, int what) {
        int at = place(planes, what);
        if (entries[at + Planes.SIDE] != what
                || !Arrays.equals(entries, at, at + Planes.SIDE, planes, 0, Planes.SIDE)) {
            return false;
        }
        System.arraycopy(entries, at + Planes.SIDE + 1, planes, 0, Planes.SIDE);
        return true;
    }

    /**
     * Remembers a move.
     *
     * @param planes the side before
     * @param what roll and purpose in one number, not 0
     * @param results array that holds the side after
     * @param resultAt index of its first plane
     */
    void keep(int[] planes, int what, int[] results, int resultAt) {
        int at = place(planes, what);
        System.arraycopy(planes, 0, entries, at, Planes.SIDE);
        entries[at + Planes.SIDE] = what;
        System.arraycopy(results, resultAt, entries, at + Planes.SIDE + 1, Planes.SIDE);
    }

    /** By multiply and shift with an odd constant of SplitMix64. */
    private static int place(int[] planes, int what) {
        long hash = what;
        for (int k = 0; k < Planes.SIDE; k++) {
            hash = (hash ^ planes[k]) * 0xBF58476D1CE4E5B9L;
            hash ^= hash >>> 29;
        }
        return ENTRY * (int) (hash >>> Long.SIZE - BITS);
    }
}
