package org.pipwright.engine.network;

import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.features.PlaceCode;
import org.pipwright.engine.position.Planes;

/**
 * A feed-forward network from a feature set to the six outcomes: fully connected layers with max(0, x) between them, a
 * softmax over the outcomes still possible at the end. Immutable and shared by threads; each thread evaluates through its
 * own {@link NetworkEvaluation}.
 *
 * <p>The first layer is kept twice: as given, and as steps. Row {@code n} of a place is the change of the first hidden
 * sums when the count there goes from n to n + 1, so that a play costs one row for each checker that leaves or arrives.
 */
public final class Network {
    /** Hidden sums are padded with zeros to a multiple of this, so that kernels need no tail. */
    static final int LANES = 16;

    private static final int MOST_CHECKERS = 15;

    private final FeatureSet features;
    private final List<Layer> layers;
    private final float[][] stepRows;
    private final float[][] extraRows;
    private final float[][] pairRows;
    private final float[] emptyBoard;
    private final PackedLayer[] later;

    /**
     * A network from its layers.
     *
     * @param features the feature set it reads
     * @param layers at least two; the first takes {@code features.inputs()}, the last gives six
     * @throws InvalidModelException if the shapes do not fit together
     */
    public Network(FeatureSet features, List<Layer> layers) {
        this.features = features;
        this.layers = List.copyOf(layers);
        requireShapes();
        Layer first = layers.get(0);
        this.stepRows = steps(first);
        this.extraRows = rows(first, FeatureSet.PLACE_INPUTS, features.extras());
        this.pairRows = rows(first, FeatureSet.PLACE_INPUTS + features.extras(), features.pairs());
        this.emptyBoard = emptyBoard(first);
        this.later = layers.stream().skip(1).map(PackedLayer::new).toArray(PackedLayer[]::new);
    }

    private void requireShapes() {
        if (layers.size() < 2) {
            throw new InvalidModelException("a network has at least two layers, not " + layers.size());
        }
        int width = features.inputs();
        for (Layer layer : layers) {
            if (layer.inputs() != width) {
                throw new InvalidModelException("a layer takes " + layer.inputs() + " inputs where " + width
                        + " come in (feature set " + features.label() + ")");
            }
            width = layer.outputs();
        }
        if (width != Outcomes.COUNT) {
            throw new InvalidModelException("the last layer gives " + width + " outputs, not " + Outcomes.COUNT);
        }
    }

    static int padded(int length) {
        return (length + LANES - 1) / LANES * LANES;
    }

    private static float[][] rows(Layer layer, int from, int count) {
        float[][] rows = new float[count][padded(layer.outputs())];
        for (int i = 0; i < count; i++) {
            System.arraycopy(layer.weights(), (from + i) * layer.outputs(), rows[i], 0, layer.outputs());
        }
        return rows;
    }

    /** The sums of a board without any checker: biases plus the codes of count 0, which are all 0. */
    private static float[] emptyBoard(Layer first) {
        float[] sums = new float[padded(first.outputs())];
        System.arraycopy(first.biases(), 0, sums, 0, first.outputs());
        return sums;
    }

    private static float[][] steps(Layer first) {
        float[][] steps = new float[2 * Planes.PLACES * MOST_CHECKERS][];
        for (int place = 0; place < 2 * Planes.PLACES; place++) {
            for (int count = 0; count < MOST_CHECKERS; count++) {
                int index = place * MOST_CHECKERS + count;
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
        float[] row = new float[padded(outputs)];
        for (int k = 0; k < PlaceCode.LENGTH; k++) {
            float change = stepOf(place % Planes.PLACES, count, k);
            int from = (place * PlaceCode.LENGTH + k) * outputs;
            for (int j = 0; change != 0 && j < outputs; j++) {
                row[j] += change * first.weights()[from + j];
            }
        }
        return row;
    }

    /**
     * The feature set the network reads.
     *
     * @return its feature set
     */
    public FeatureSet features() {
        return features;
    }

    /**
     * The layers as given.
     *
     * @return an unmodifiable list
     */
    public List<Layer> layers() {
        return layers;
    }

    /**
     * Sizes from input to output.
     *
     * @return for instance {@code 270-256-32-6}
     */
    public String shape() {
        StringBuilder shape = new StringBuilder().append(features.inputs());
        layers.forEach(layer -> shape.append('-').append(layer.outputs()));
        return shape.toString();
    }

    /** Padded length of the first hidden layer. */
    int hidden() {
        return emptyBoard.length;
    }

    /** First hidden sums of an empty board; not to be changed. */
    float[] emptyBoard() {
        return emptyBoard;
    }

    /** Change of the hidden sums when a count goes from {@code count} to {@code count + 1}; side 0 is on roll. */
    float[] stepRow(int side, int place, int count) {
        return stepRows[(side * Planes.PLACES + place) * MOST_CHECKERS + count];
    }

    float[] extraRow(int extra) {
        return extraRows[extra];
    }

    float[] pairRow(int pair) {
        return pairRows[pair];
    }

    PackedLayer[] later() {
        return later;
    }
}
