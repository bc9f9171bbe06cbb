package org.pipwright.engine.network;

import org.pipwright.engine.features.FacingPairs;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.position.Planes;

/** One thread's sums of a first layer: from scratch, or by differences from a position given before. */
final class FirstSums {
    private static final int[] EMPTY = new int[Planes.STRIDE];

    private static final int ALL = -1;

    private final FirstLayer layer;
    private final Kernel kernel;
    private final FeatureSet features;
    private final boolean paired;
    private final RowList list;
    private final PlaceChanges changes;
    private final int[] base = new int[Planes.STRIDE];
    private final float[] baseSums;

    /** The extras that are not pips: of the position given before, and of the one at hand. */
    private final float[] baseOthers;

    private final float[] others;

    FirstSums(FirstLayer layer, Kernel kernel) {
        this.layer = layer;
        this.kernel = kernel;
        this.features = layer.features();
        this.paired = features.pairs() > 0;
        this.list = new RowList(layer);
        this.changes = paired ? new PlaceChanges(layer, kernel) : null;
        this.baseSums = new float[layer.width()];
        this.baseOthers = new float[2 * features.others()];
        this.others = new float[2 * features.others()];
    }

    /** Sums of a position, each at least {@code floor}. */
    void fromScratch(int[] planes, int at, float floor, float[] sums) {
        sum(planes, at, floor, sums, others);
    }

    private void sum(int[] planes, int at, float floor, float[] sums, float[] othersOut) {
        list.clear();
        list.addSteps(EMPTY, 0, planes, at);
        features.others(planes, at, othersOut, 0);
        for (int i = 0; i < othersOut.length; i++) {
            list.add(layer.otherRows() + i, othersOut[i]);
        }
        if (paired) {
            list.addPairs(planes, at, ALL, ALL, 1);
        }
        accumulate(layer.emptyBoard(), layer.weights(), floor, sums);
    }

    /** Sets the position that {@link #fromBase} starts from. */
    void begin(int[] planes, int at) {
        System.arraycopy(planes, at, base, 0, Planes.STRIDE);
        sum(planes, at, Float.NEGATIVE_INFINITY, baseSums, baseOthers);
        if (paired) {
            changes.begin(planes, at);
        }
    }

    /** The same as {@link #fromScratch} but for rounding, from the sums of the position given to {@link #begin}. */
    void fromBase(int[] planes, int at, float floor, float[] sums) {
        features.others(planes, at, others, 0);
        list.clear();
        if (paired && sameOnRoll(planes, at)) {
            addOthers(0);
            addPlaces(planes, at);
            accumulate(baseSums, changes.rows(), floor, sums);
            return;
        }
        addOthers(layer.otherRows());
        list.addSteps(base, 0, planes, at);
        if (paired) {
            int mine = FacingPairs.changed(planes, at, base, 0);
            int theirs = FacingPairs.changed(planes, at + Planes.SIDE, base, Planes.SIDE);
            list.addPairs(base, 0, mine, theirs, -1);
            list.addPairs(planes, at, mine, theirs, 1);
        }
        accumulate(baseSums, layer.weights(), floor, sums);
    }

    /** Whether the side on roll has not been hit. */
    private boolean sameOnRoll(int[] planes, int at) {
        return planes[at] == base[0]
                && planes[at + 1] == base[1]
                && planes[at + 2] == base[2]
                && planes[at + 3] == base[3];
    }

    private void addOthers(int firstRow) {
        for (int i = 0; i < others.length; i++) {
            list.addUnlessZero(firstRow + i, others[i] - baseOthers[i]);
        }
    }

    /** Adds what changes by the opponent's places. */
    private void addPlaces(int[] planes, int at) {
        int changed = 0;
        for (int k = Planes.SIDE; k < Planes.STRIDE; k++) {
            changed |= planes[at + k] ^ base[k];
        }
        for (; changed != 0; changed &= changed - 1) {
            int place = Integer.numberOfTrailingZeros(changed);
            list.add(changes.row(place, Planes.count(planes, at + Planes.SIDE, place)), 1);
        }
    }

    private void accumulate(float[] start, float[] weights, float floor, float[] sums) {
        kernel.accumulate(start, weights, list.rows(), list.scales(), list.size(), floor, sums);
    }
}
