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

    /** Added to the opponent's places: then those of both sides are bits of a long. */
    static final int OPPONENT = Integer.SIZE;

    /** A step is named by its place and, in so many bits, the count it begins with. */
    private static final int COUNT_BITS = 4;

    private final FeatureSet features;

    /** All rows, one after another: those of pairs, then those of extras other than pips, then those of steps. */
    private final float[] weights;

    /** The row of each step; steps that change the sums alike share one. */
    private final int[] steps = new int[2 * OPPONENT << COUNT_BITS];

    private final int others;
    private final float[] emptyBoard;

    FirstLayer(FeatureSet features, Layer layer) {
        this.features = features;
        emptyBoard = emptyBoard(layer);
        others = features.pairs();
        int first = others + 2 * features.others();
        weights = new float[width() * placeSteps(first)];
        int measures = features.extras() / 2;
        copy(layer, FeatureSet.PLACE_INPUTS + features.extras(), features.pairs(), 0);
        copy(layer, FeatureSet.PLACE_INPUTS + 1, features.others(), others);
        copy(layer, FeatureSet.PLACE_INPUTS + measures + 1, features.others(), others + features.others());
        writeSteps(layer);
    }

    private void copy(Layer layer, int input, int count, int row) {
        int outputs = layer.outputs();
        for (int i = 0; i < count; i++) {
            System.arraycopy(layer.weights(), (input + i) * outputs, weights, (row + i) * width(), outputs);
        }
    }

    /** The sums of a board without any checker: biases plus the codes of count 0, which are all 0. */
    private static float[] emptyBoard(Layer first) {
        float[] sums = new float[Network.padded(first.outputs())];
        System.arraycopy(first.biases(), 0, sums, 0, first.outputs());
        return sums;
    }

    /** Gives each step its row, from the given one on; returns the row after the last. */
    private int placeSteps(int first) {
        int next = first;
        for (int step = 0; step < steps.length; step++) {
            if (exists(step)) {
                steps[step] = isLikeTheOneBefore(step) ? steps[step - 1] : next++;
            }
        }
        return next;
    }

    private void writeSteps(Layer first) {
        for (int step = 0; step < steps.length; step++) {
            if (exists(step) && !isLikeTheOneBefore(step)) {
                writeStep(first, step, steps[step] * width());
            }
        }
    }

    private static boolean exists(int step) {
        return ownPlace(step) < Planes.PLACES && count(step) < MAX_CHECKERS;
    }

    private static int ownPlace(int step) {
        return (step >> COUNT_BITS) % OPPONENT;
    }

    private static int count(int step) {
        return step % (1 << COUNT_BITS);
    }

    /** Whether it changes the inputs just as the step before did: the row is then shared. */
    private static boolean isLikeTheOneBefore(int step) {
        return count(step) > 0 && sameStep(ownPlace(step), count(step));
    }

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

    private void writeStep(Layer first, int step, int at) {
        int side = (step >> COUNT_BITS) / OPPONENT;
        int own = ownPlace(step);
        for (int k = 0; k < PlaceCode.LENGTH; k++) {
            addTo(at, first, (side * Planes.PLACES + own) * PlaceCode.LENGTH + k, stepOf(own, count(step), k));
        }
        addTo(at, first, FeatureSet.PLACE_INPUTS + side * features.extras() / 2, FeatureSet.pips(own));
    }

    private void addTo(int at, Layer first, int input, float change) {
        int from = input * first.outputs();
        for (int j = 0; change != 0 && j < first.outputs(); j++) {
            weights[at + j] += change * first.weights()[from + j];
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

    /** All rows, row by row; not to be changed. Row 0 is that of pair 0, and those of the other pairs follow. */
    float[] weights() {
        return weights;
    }

    /**
     * The row that changes the sums as a count goes from {@code count} to {@code count + 1}.
     *
     * @param place a place of the side on roll, or one of the opponent and {@link #OPPONENT}
     */
    int stepRow(int place, int count) {
        return steps[place << COUNT_BITS | count];
    }

    /** The row of the first extra that is not pips; those of the others follow, without pips. */
    int otherRows() {
        return others;
    }
}
