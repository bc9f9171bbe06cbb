package org.pipwright.engine.network;

import org.pipwright.engine.features.FacingPairs;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.position.Planes;

/** One thread's sums of a first layer: from scratch, or by differences from a position given before. */
final class FirstSums {
    /** Most rows besides the extras: all 30 checkers leave one place and arrive at another. */
    private static final int MAX_STEPS = 60;

    private final FirstLayer layer;
    private final Kernel kernel;
    private final FeatureSet features;
    private final float[][] rows;
    private final float[] scales;
    private final int[] base = new int[Planes.STRIDE];
    private final float[] baseExtras;
    private final float[] baseSums;
    private final float[] extras;
    private final int[] pairs = new int[FacingPairs.MAX];
    private final boolean paired;

    private int rowCount;

    FirstSums(FirstLayer layer, Kernel kernel) {
        this.layer = layer;
        this.kernel = kernel;
        this.features = layer.features();
        this.paired = features.pairs() > 0;
        // One more than can be used: fromBase writes a row before it knows whether it counts.
        int mostPairs = paired ? 2 * FacingPairs.MAX : 0;
        this.rows = new float[MAX_STEPS + features.extras() + mostPairs + 1][];
        this.scales = new float[rows.length];
        this.baseExtras = new float[features.extras()];
        this.extras = new float[features.extras()];
        this.baseSums = new float[layer.width()];
    }

    /** Sums of a position, each at least {@code floor}. */
    void fromScratch(int[] planes, int at, float floor, float[] sums) {
        sum(planes, at, floor, sums, extras);
    }

    private void sum(int[] planes, int at, float floor, float[] sums, float[] extrasOut) {
        rowCount = 0;
        for (int side = 0; side < 2; side++) {
            int sideAt = at + side * Planes.SIDE;
            for (int left = Planes.occupied(planes, sideAt); left != 0; left &= left - 1) {
                int place = Integer.numberOfTrailingZeros(left);
                addSteps(side, place, 0, Planes.count(planes, sideAt, place));
            }
        }
        features.extras(planes, at, extrasOut, 0);
        for (int i = 0; i < extrasOut.length; i++) {
            addRow(layer.extraRow(i), extrasOut[i]);
        }
        if (paired) {
            addPairs(FacingPairs.list(planes, at, pairs, 0), 1);
        }
        kernel.accumulate(layer.emptyBoard(), rows, scales, rowCount, floor, sums);
    }

    /** Sets the position that {@link #fromBase} starts from. */
    void begin(int[] planes, int at) {
        System.arraycopy(planes, at, base, 0, Planes.STRIDE);
        sum(planes, at, Float.NEGATIVE_INFINITY, baseSums, baseExtras);
    }

    /** The same as {@link #fromScratch} but for rounding, from the sums of the position given to {@link #begin}. */
    void fromBase(int[] planes, int at, float floor, float[] sums) {
        rowCount = 0;
        for (int side = 0; side < 2; side++) {
            addChanges(side, planes, at + side * Planes.SIDE, side * Planes.SIDE);
        }
        features.extras(planes, at, extras, 0);
        for (int i = 0; i < extras.length; i++) {
            float change = extras[i] - baseExtras[i];
            rows[rowCount] = layer.extraRow(i);
            scales[rowCount] = change;
            rowCount += change != 0 ? 1 : 0;
        }
        if (paired) {
            addPairChanges(planes, at);
        }
        kernel.accumulate(baseSums, rows, scales, rowCount, floor, sums);
    }

    private void addRow(float[] row, float scale) {
        rows[rowCount] = row;
        scales[rowCount++] = scale;
    }

    private void addSteps(int side, int place, int before, int after) {
        for (int count = before; count < after; count++) {
            addRow(layer.stepRow(side, place, count), 1);
        }
        for (int count = after; count < before; count++) {
            addRow(layer.stepRow(side, place, count), -1);
        }
    }

    private void addChanges(int side, int[] planes, int at, int baseAt) {
        int changed = 0;
        for (int k = 0; k < Planes.SIDE; k++) {
            changed |= planes[at + k] ^ base[baseAt + k];
        }
        for (; changed != 0; changed &= changed - 1) {
            int place = Integer.numberOfTrailingZeros(changed);
            addSteps(side, place, Planes.count(base, baseAt, place), Planes.count(planes, at, place));
        }
    }

    private void addPairs(int count, float scale) {
        for (int i = 0; i < count; i++) {
            addRow(layer.pairRow(pairs[i]), scale);
        }
    }

    /** Takes the pairs that changed places had a part in and adds those they have a part in now. */
    private void addPairChanges(int[] planes, int at) {
        int mine = FacingPairs.changed(planes, at, base, 0);
        int theirs = FacingPairs.changed(planes, at + Planes.SIDE, base, Planes.SIDE);
        addPairs(FacingPairs.list(base, 0, mine, theirs, pairs, 0), -1);
        addPairs(FacingPairs.list(planes, at, mine, theirs, pairs, 0), 1);
    }
}
