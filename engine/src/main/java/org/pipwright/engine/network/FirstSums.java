package org.pipwright.engine.network;

import org.pipwright.engine.features.FacingPairs;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.position.Planes;

/** One thread's sums of a first layer: from scratch, or by differences from a position given before. */
final class FirstSums {
    /** Most rows besides the measures: all 30 checkers leave one place and arrive at another. */
    private static final int MAX_STEPS = 60;

    private final FirstLayer layer;
    private final Kernel kernel;
    private final FeatureSet features;

    /** Where rows of the layer begin that are added, and how many times each is. */
    private final int[] rows;

    private final float[] scales;
    private final int[] base = new int[Planes.STRIDE];
    private final float[] baseOthers;
    private final float[] baseSums;
    private final float[] others;
    private final boolean paired;

    FirstSums(FirstLayer layer, Kernel kernel) {
        this.layer = layer;
        this.kernel = kernel;
        this.features = layer.features();
        this.paired = features.pairs() > 0;
        // One more than can be used: fromBase writes a row before it knows whether it counts.
        int mostPairs = paired ? 2 * FacingPairs.MAX : 0;
        this.rows = new int[MAX_STEPS + 2 * features.others() + mostPairs + 1];
        this.scales = new float[rows.length];
        this.baseOthers = new float[2 * features.others()];
        this.others = new float[2 * features.others()];
        this.baseSums = new float[layer.width()];
    }

    /** Sums of a position, each at least {@code floor}. */
    void fromScratch(int[] planes, int at, float floor, float[] sums) {
        sum(planes, at, floor, sums, others);
    }

    private void sum(int[] planes, int at, float floor, float[] sums, float[] othersOut) {
        int size = 0;
        for (int side = 0; side < 2; side++) {
            int sideAt = at + side * Planes.SIDE;
            for (int left = Planes.occupied(planes, sideAt); left != 0; left &= left - 1) {
                int place = Integer.numberOfTrailingZeros(left);
                size = addSteps(size, side, place, 0, Planes.count(planes, sideAt, place));
            }
        }
        features.others(planes, at, othersOut, 0);
        for (int i = 0; i < othersOut.length; i++) {
            rows[size] = layer.otherRows() + i * layer.width();
            scales[size++] = othersOut[i];
        }
        if (paired) {
            size = addPairs(size, FacingPairs.list(planes, at, rows, size), 1);
        }
        kernel.accumulate(layer.emptyBoard(), layer.rows(), rows, scales, size, floor, sums);
    }

    /** Sets the position that {@link #fromBase} starts from. */
    void begin(int[] planes, int at) {
        System.arraycopy(planes, at, base, 0, Planes.STRIDE);
        sum(planes, at, Float.NEGATIVE_INFINITY, baseSums, baseOthers);
    }

    /** The same as {@link #fromScratch} but for rounding, from the sums of the position given to {@link #begin}. */
    void fromBase(int[] planes, int at, float floor, float[] sums) {
        int size = addChanges(0, 0, planes, at, 0);
        size = addChanges(size, 1, planes, at + Planes.SIDE, Planes.SIDE);
        features.others(planes, at, others, 0);
        for (int i = 0; i < others.length; i++) {
            float change = others[i] - baseOthers[i];
            rows[size] = layer.otherRows() + i * layer.width();
            scales[size] = change;
            size += change != 0 ? 1 : 0;
        }
        if (paired) {
            size = addPairChanges(size, planes, at);
        }
        kernel.accumulate(baseSums, layer.rows(), rows, scales, size, floor, sums);
    }

    /**
     * A count that is another one: nearly always by one checker, more or less, which makes no branch worth while. Like all that
     * add to the list of rows, it takes its size and returns the new one.
     */
    private int addSteps(int size, int side, int place, int before, int after) {
        float sign = Integer.signum(after - before);
        int most = Math.max(before, after);
        int count = Math.min(before, after);
        int next = size;
        do {
            rows[next] = layer.stepRow(side, place, count++);
            scales[next++] = sign;
        } while (count < most);
        return next;
    }

    /** The planes are read once: what is written to the list of rows might, for all the compiler knows, change them. */
    private int addChanges(int size, int side, int[] planes, int at, int baseAt) {
        int before0 = base[baseAt];
        int before1 = base[baseAt + 1];
        int before2 = base[baseAt + 2];
        int before3 = base[baseAt + 3];
        int after0 = planes[at];
        int after1 = planes[at + 1];
        int after2 = planes[at + 2];
        int after3 = planes[at + 3];
        int next = size;
        int changed = before0 ^ after0 | before1 ^ after1 | before2 ^ after2 | before3 ^ after3;
        for (; changed != 0; changed &= changed - 1) {
            int place = Integer.numberOfTrailingZeros(changed);
            int before = Planes.count(before0, before1, before2, before3, place);
            next = addSteps(next, side, place, before, Planes.count(after0, after1, after2, after3, place));
        }
        return next;
    }

    /** Makes rows of the numbers of so many pairs, which follow those that are there. */
    private int addPairs(int size, int count, float scale) {
        int first = layer.pairRows();
        int width = layer.width();
        for (int i = size; i < size + count; i++) {
            rows[i] = first + rows[i] * width;
            scales[i] = scale;
        }
        return size + count;
    }

    /** Takes the pairs that changed places had a part in and adds those they have a part in now. */
    private int addPairChanges(int size, int[] planes, int at) {
        int mine = FacingPairs.changed(planes, at, base, 0);
        int theirs = FacingPairs.changed(planes, at + Planes.SIDE, base, Planes.SIDE);
        int next = addPairs(size, FacingPairs.list(base, 0, mine, theirs, rows, size), -1);
        return addPairs(next, FacingPairs.list(planes, at, mine, theirs, rows, next), 1);
    }
}
