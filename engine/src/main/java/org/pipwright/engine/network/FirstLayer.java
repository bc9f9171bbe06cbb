package org.pipwright.engine.network;

import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.features.PlaceCode;
import org.pipwright.engine.position.Planes;

/**
 * The first layer of a network, laid out so that siblings cost only what they differ in. Row {@code n} of a place is the
 * change of the first sums when the count there goes from n to n + 1: a play costs one row for each checker that leaves
 * or arrives. Rows are padded with zeros to a multiple of {@link Network#LANES}.
 */
final class FirstLayer {
    private static final int MAX_CHECKERS = 15;

    private final FeatureSet features;
    private final float[][] stepRows;
    private final float[][] extraRows;
    private final float[][] pairRows;
    private final float[] emptyBoard;

    FirstLayer(FeatureSet features, Layer layer) {
        this.features = features;
        stepRows = steps(layer);
        extraRows = rows(layer, FeatureSet.PLACE_INPUTS, features.extras());
        pairRows = rows(layer, FeatureSet.PLACE_INPUTS + features.extras(), features.pairs());
        emptyBoard = emptyBoard(layer);
    }

    private static float[][] rows(Layer layer, int from, int count) {
        float[][] rows = new float[count][Network.padded(layer.outputs())];
        for (int i = 0; i < count; i++) {
            System.arraycopy(layer.weights(), (from + i) * layer.outputs(), rows[i], 0, layer.outputs());
        }
        return rows;
    }

    /** The sums of a board without any checker: biases plus the codes of count 0, which are all 0. */
    private static float[] emptyBoard(Layer first) {
        float[] sums = new float[Network.padded(first.outputs())];
        System.arraycopy(first.biases(), 0, sums, 0, first.outputs());
        return sums;
    }

    private static float[][] steps(Layer first) {
        float[][] steps = new float[2 * Planes.PLACES * MAX_CHECKERS][];
        for (int place = 0; place < 2 * Planes.PLACES; place++) {
            for (int count = 0; count < MAX_CHECKERS; count++) {
                int index = place * MAX_CHECKERS + count;
                boolean sameAsBefore = count > 0 && sameStep(place % Planes.PLACES, count);
                steps[index] = sameAsBefore ? steps[index - 1] : step(first, place, count);
            }
        }
        return steps;
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

    private static float[] step(Layer first, int place, int count) {
        int outputs = first.outputs();
        float[] row = new float[Network.padded(outputs)];
        for (int k = 0; k < PlaceCode.LENGTH; k++) {
            float change = stepOf(place % Planes.PLACES, count, k);
            int from = (place * PlaceCode.LENGTH + k) * outputs;
            for (int j = 0; change != 0 && j < outputs; j++) {
                row[j] += change * first.weights()[from + j];
            }
        }
        return row;
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

    /** Change of the sums when a count goes from {@code count} to {@code count + 1}; side 0 is on roll. */
    float[] stepRow(int side, int place, int count) {
        return stepRows[(side * Planes.PLACES + place) * MAX_CHECKERS + count];
    }

    float[] extraRow(int extra) {
        return extraRows[extra];
    }

    float[] pairRow(int pair) {
        return pairRows[pair];
    }
}
