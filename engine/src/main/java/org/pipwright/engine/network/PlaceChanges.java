package org.pipwright.engine.network;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;

/**
 * What sums of a first layer change by as the opponent, who has just played, has another number of checkers on one of its
 * places, and the side on roll stays as it is: steps and pairs are a sum over such places, and siblings share most of them.
 * Each change is added up when it is first asked for, and kept until another position begins. One thread's buffer.
 */
final class PlaceChanges {
    private static final int COUNTS = 16;

    /** Changes that there is room for at first. */
    private static final int ROOM = 32;

    private final FirstLayer layer;
    private final Kernel kernel;
    private final RowList list;
    private final int[] base = new int[Planes.STRIDE];
    private final float[] nothing;
    private final float[] sums;

    /** Row by row, first those of the layer's extras that are not pips. */
    private float[] rows;

    private int size;

    /** By place and count: the row, and since which beginning. */
    private final int[] row = new int[Planes.PLACES * COUNTS];

    private final long[] since = new long[row.length];
    private long beginning;

    PlaceChanges(FirstLayer layer, Kernel kernel) {
        this.layer = layer;
        this.kernel = kernel;
        list = new RowList(layer);
        int width = layer.width();
        nothing = new float[width];
        sums = new float[width];
        int others = 2 * layer.features().others();
        rows = new float[(others + ROOM) * width];
        System.arraycopy(layer.weights(), layer.otherRows() * width, rows, 0, others * width);
    }

    /** The position that changes start from. */
    void begin(int[] planes, int at) {
        System.arraycopy(planes, at, base, 0, Planes.STRIDE);
        size = 2 * layer.features().others();
        beginning++;
    }

    /** All rows, those of extras first. */
    float[] rows() {
        return rows;
    }

    /** The row of a change: to so many checkers on a place of the opponent that had another number of them. */
    int row(int place, int count) {
        int at = place * COUNTS + count;
        if (since[at] != beginning) {
            since[at] = beginning;
            row[at] = write(place, count);
        }
        return row[at];
    }

    private int write(int place, int count) {
        int before = Planes.count(base, Planes.SIDE, place);
        list.clear();
        list.addSteps(FirstLayer.OPPONENT + place, before, count);
        // Whether there is one checker or more is all that pairs tell.
        if (place != Planes.OFF && Math.min(before, 2) != Math.min(count, 2)) {
            list.addPairs(base, 0, 0, 1 << place, -1);
            set(place, count);
            list.addPairs(base, 0, 0, 1 << place, 1);
            set(place, before);
        }
        kernel.accumulate(
                nothing, layer.weights(), list.rows(), list.scales(), list.size(), Float.NEGATIVE_INFINITY, sums);
        if ((size + 1) * sums.length > rows.length) {
            rows = Arrays.copyOf(rows, 2 * rows.length);
        }
        System.arraycopy(sums, 0, rows, size * sums.length, sums.length);
        return size++;
    }

    private void set(int place, int count) {
        for (int k = 0; k < Planes.SIDE; k++) {
            int plane = base[Planes.SIDE + k] & ~(1 << place);
            base[Planes.SIDE + k] = plane | (count >>> k & 1) << place;
        }
    }
}
