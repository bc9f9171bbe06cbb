package org.pipwright.engine.network;

import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.features.PlaceCode;
import org.pipwright.engine.position.Planes;

/**
 * The first layer of a network, laid out so that siblings cost only what they differ in. Row {@code n} of a place is the
 * change of the first sums when the count there goes from n to n + 1, that of the pips included: a play costs one row for
 * each checker that leaves or arrives. Rows are padded with zeros to a multiple of {@link Network#LANES}.
 */
final class FirstLayer {
    private static final int MAX_CHECKERS = 15;

    private final FeatureSet features;

    /** All rows, one after another: those of steps, then those of extras other than pips, then those of pairs. */
    private final float[] rows;

    /** Where the row of each step begins; steps that change the sums alike share one. */
    private final int[] steps = new int[2 * Planes.PLACES * MAX_CHECKERS];

    private final int others;
    private final float[] emptyBoard;

    FirstLayer(FeatureSet features, Layer layer) {
        this.features = features;
        emptyBoard = emptyBoard(layer);
        others = width() * placeSteps();
        rows = new float[others + width() * (2 * features.others() + features.pairs())];
        writeSteps(layer);
        int ofSide = features.extras() / 2;
        copy(layer, FeatureSet.PLACE_INPUTS + 1, features.others(), others);
        copy(layer, FeatureSet.PLACE_INPUTS + ofSide + 1, features.others(), others + features.others() * width());
        copy(layer, FeatureSet.PLACE_INPUTS + features.extras(), features.pairs(), pairRows());
    }

    private void copy(Layer layer, int from, int count, int at) {
        for (int i = 0; i < count; i++) {
            System.arraycopy(layer.weights(), (from + i) * layer.outputs(), rows, at + i * width(), layer.outputs());
        }
    }

    /** The sums of a board without any checker: biases plus the codes of count 0, which are all 0. */
    private static float[] emptyBoard(Layer first) {
        float[] sums = new float[Network.padded(first.outputs())];
        System.arraycopy(first.biases(), 0, sums, 0, first.outputs());
        return sums;
    }

    /** Gives each step its row; returns how many rows there are. */
    private int placeSteps() {
        int size = 0;
        for (int step = 0; step < steps.length; step++) {
            int count = step % MAX_CHECKERS;
            boolean sameAsBefore = count > 0 && sameStep(step / MAX_CHECKERS % Planes.PLACES, count);
            steps[step] = sameAsBefore ? steps[step - 1] : width() * size++;
        }
        return size;
    }

    private void writeSteps(Layer first) {
        for (int step = 0; step < steps.length; step++) {
            int count = step % MAX_CHECKERS;
            if (count == 0 || steps[step] != steps[step - 1]) {
                writeStep(first, step / MAX_CHECKERS, count, steps[step]);
            }
        }
    }

    /** Whether going from count to count + 1 changes the inputs just as the step before did: the row is then shared. */
    private static boolean sameStep(int place, int count) {
        for (int k = 0; k < PlaceCode.LENGTH; k++) {
            if (Math.abs(stepOf(place, count, k) - stepOf(place, count - 1, k)) > 1e-6f) {
                return false;
            }
        }
        return true;
    }

    private static float stepOf(int place, int count, int k) {
        return PlaceCode.value(place, count + 1, k) - PlaceCode.value(place, count, k);
    }

    private void writeStep(Layer first, int place, int count, int at) {
        int own = place % Planes.PLACES;
        for (int k = 0; k < PlaceCode.LENGTH; k++) {
            addTo(at, first, place * PlaceCode.LENGTH + k, stepOf(own, count, k));
        }
        int pips = FeatureSet.PLACE_INPUTS + place / Planes.PLACES * features.extras() / 2;
        addTo(at, first, pips, FeatureSet.pips(own));
    }

    private void addTo(int at, Layer first, int input, float change) {
        int from = input * first.outputs();
        for (int j = 0; change != 0 && j < first.outputs(); j++) {
            rows[at + j] += change * first.weights()[from + j];
        }
    }

    FeatureSet features() {
        return features;
    }

    /** Padded number of sums. */
    int width() {
        return emptyBoard.length;
    }

    /** Sums of an empty board; not to be changed. */
    float[] emptyBoard() {
        return emptyBoard;
    }

    /** All rows; not to be changed. */
    float[] rows() {
        return rows;
    }

    /** Where the row begins that changes the sums as a count goes from {@code count} to {@code count + 1}; side 0 is on roll. */
    int stepRow(int side, int place, int count) {
        return steps[(side * Planes.PLACES + place) * MAX_CHECKERS + count];
    }

    /** Where the row of the first extra begins that is not pips; those of the others follow, without pips. */
    int otherRows() {
        return others;
    }

    /** Where the row of pair 0 begins; those of the others follow. */
    int pairRows() {
        return others + 2 * features.others() * width();
    }
}
