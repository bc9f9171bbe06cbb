package org.pipwright.engine.network;

import org.pipwright.engine.features.FacingPairs;
import org.pipwright.engine.position.Planes;

/** Rows of a first layer that are to be added up, and how many times each is. One thread's buffer. */
final class RowList {
    /** Most rows besides those of measures and pairs: all 30 checkers leave one place and arrive at another. */
    private static final int MAX_STEPS = 60;

    /** As many scales are written at once. */
    private static final int SPARE = 8;

    private final FirstLayer layer;
    private final int[] rows;
    private final float[] scales;
    private int size;

    RowList(FirstLayer layer) {
        this.layer = layer;
        int pairs = layer.features().pairs() > 0 ? 2 * FacingPairs.MAX : 0;
        rows = new int[MAX_STEPS + layer.features().extras() + pairs + SPARE];
        scales = new float[rows.length];
    }

    int[] rows() {
        return rows;
    }

    float[] scales() {
        return scales;
    }

    int size() {
        return size;
    }

    void clear() {
        size = 0;
    }

    void add(int row, float scale) {
        rows[size] = row;
        scales[size++] = scale;
    }

    /** No branch, since none could be foreseen. */
    void addUnlessZero(int row, float scale) {
        rows[size] = row;
        scales[size] = scale;
        size += scale != 0 ? 1 : 0;
    }

    /**
     * Adds the steps that lead from one board to another, those of both sides in one go. The planes are read before anything
     * is written, which might, for all the compiler knows, change them.
     */
    void addSteps(int[] from, int fromAt, int[] to, int toAt) {
        long before0 = bothSides(from, fromAt);
        long before1 = bothSides(from, fromAt + 1);
        long before2 = bothSides(from, fromAt + 2);
        long before3 = bothSides(from, fromAt + 3);
        long after0 = bothSides(to, toAt);
        long after1 = bothSides(to, toAt + 1);
        long after2 = bothSides(to, toAt + 2);
        long after3 = bothSides(to, toAt + 3);
        long changed = before0 ^ after0 | before1 ^ after1 | before2 ^ after2 | before3 ^ after3;
        for (; changed != 0; changed &= changed - 1) {
            int place = Long.numberOfTrailingZeros(changed);
            int before = count(before0, before1, before2, before3, place);
            addSteps(place, before, count(after0, after1, after2, after3, place));
        }
    }

    /** A plane of the side on roll, and above it the opponent's. */
    private static long bothSides(int[] planes, int at) {
        return planes[at] & 0xFFFF_FFFFL | (long) planes[at + Planes.SIDE] << FirstLayer.OPPONENT;
    }

    private static int count(long plane0, long plane1, long plane2, long plane3, int place) {
        long low = plane0 >>> place & 1 | (plane1 >>> place & 1) << 1;
        return (int) (low | (plane2 >>> place & 1) << 2 | (plane3 >>> place & 1) << 3);
    }

    /**
     * Adds the steps from one count of a place to another one: nearly always a single step, more or less, which makes no branch
     * worth while.
     */
    void addSteps(int place, int before, int after) {
        float sign = Integer.signum(after - before);
        int most = Math.max(before, after);
        int count = Math.min(before, after);
        do {
            add(layer.stepRow(place, count++), sign);
        } while (count < most);
    }

    /** Adds the pairs that some places have a part in, as {@link FacingPairs#list(int[], int, int, int, int[], int)}. */
    void addPairs(int[] planes, int at, int mine, int theirs, float scale) {
        int end = size + FacingPairs.list(planes, at, mine, theirs, rows, size);
        // Eight at a time, for there are seldom more.
        for (int i = size; i < end; i += SPARE) {
            for (int k = 0; k < SPARE; k++) {
                scales[i + k] = scale;
            }
        }
        size = end;
    }
}
