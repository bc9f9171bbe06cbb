package org.pipwright.training.cuda;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.PlaceCode;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.learner.LayerKernel;

/**
 * One thread's buffers for a lesson of a residual network: forward, and back to the derivatives. All that comes behind
 * max(0, x) costs only what is not 0 there, nine numbers of ten in a network that has learned.
 *
 * <p>All tensors but the last layer's lie at multiples of the width in the flat array of weights, so it is one matrix with
 * rows of the width, and a tensor's rows follow each other; biases are rows too. Derivatives lie likewise, but those of a
 * block's first matrix are the other way round: its columns are rows, since few of its outputs have any.
 */
final class ThreadPass {
    private static final float[] POINTS = {1, 2, 3, -1, -2, -3};
    private static final float EPSILON = 1e-5f;

    private final ResidualShape shape;
    private final int width;
    private final LayerKernel kernel;
    private final int[] inputs = new int[ResidualShape.INPUTS + 1];
    private final float[] inputValues = new float[ResidualShape.INPUTS + 1];
    private int active;

    /** Rows of a block's first matrix and its bias, for each block; all of them count. */
    private final int[][] denseRows;

    /** Numbers behind each norm, and a 1 for the bias. */
    private final float[][] normed;

    private final float[] scales;
    private final float[] hidden;
    private final float[] change;
    private final float[] inner;

    /** Behind max(0, x) of each block: which numbers are not 0, as they are, and how many; the bias comes last. */
    private final int[][] on;

    private final float[][] onValues;
    private final int[] onCounts;
    private final int[] rows;
    private final float[] back;
    private final float[] deltas;
    private final float[] ahead;
    private final float[] chances = new float[Outcomes.COUNT];
    private final float[] outputDelta = new float[Outcomes.COUNT];
    private double entropy;
    private double squares;

    ThreadPass(ResidualShape shape, LayerKernel kernel) {
        this.shape = shape;
        this.kernel = kernel;
        width = shape.width();
        int blocks = shape.blocks();
        denseRows = new int[blocks][width + 1];
        for (int k = 0; k < blocks; k++) {
            for (int i = 0; i < width; i++) {
                denseRows[k][i] = shape.a(k) / width + i;
            }
            denseRows[k][width] = shape.aBias(k) / width;
        }
        normed = new float[blocks + 1][width + 1];
        for (float[] row : normed) {
            row[width] = 1;
        }
        scales = new float[blocks + 1];
        hidden = new float[width];
        change = new float[width];
        inner = new float[width];
        on = new int[blocks][width + 1];
        onValues = new float[blocks][width + 1];
        onCounts = new int[blocks];
        rows = new int[width + 1];
        back = new float[width];
        deltas = new float[width + 1];
        ahead = new float[width];
    }

    /**
     * Adds a lesson's derivatives by every weight to a gradient.
     *
     * @param turned the blocks' first matrices, one after another, the other way round
     */
    void add(int[] planes, int at, float[] target, int targetAt, float[] weights, float[] turned, float[] gradient) {
        forward(planes, at, weights);
        outputDeltas(PossibleOutcomes.of(planes, at), target, targetAt);
        throughOutput(weights, gradient);
        for (int k = shape.blocks() - 1; k >= 0; k--) {
            throughBlock(k, weights, turned, gradient);
        }
        kernel.addGradient(inputs, inputValues, active, ahead, width, gradient);
    }

    /** The sums of cross-entropy and of squared errors of equity since the last call. */
    double[] losses() {
        double[] losses = {entropy, squares};
        entropy = 0;
        squares = 0;
        return losses;
    }

    private void findInputs(int[] planes, int at) {
        active = 0;
        int next = 0;
        for (int side = at; side <= at + Planes.SIDE; side += Planes.SIDE) {
            for (int place = 0; place < Planes.PLACES; place++) {
                int count = Planes.count(planes, side, place);
                for (int k = 0; k < PlaceCode.LENGTH; k++) {
                    input(next++, PlaceCode.value(place, count, k));
                }
            }
        }
        for (int side = at; side <= at + Planes.SIDE; side += Planes.SIDE) {
            input(next++, Planes.pips(planes, side) / 167f);
            input(next++, Planes.contact(planes, at) ? 1 : 0);
        }
        input(shape.inputBias() / width, 1);
    }

    private void input(int row, float value) {
        if (value != 0) {
            inputs[active] = row;
            inputValues[active++] = value;
        }
    }

    private void forward(int[] planes, int at, float[] weights) {
        findInputs(planes, at);
        kernel.forward(inputs, inputValues, active, weights, width, hidden);
        for (int k = 0; k < shape.blocks(); k++) {
            norm(k);
            kernel.forward(denseRows[k], normed[k], width + 1, weights, width, inner);
            findOn(k);
            for (int r = 0; r < onCounts[k] - 1; r++) {
                rows[r] = shape.b(k) / width + on[k][r];
            }
            rows[onCounts[k] - 1] = shape.bBias(k) / width;
            kernel.forward(rows, onValues[k], onCounts[k], weights, width, change);
            for (int j = 0; j < width; j++) {
                hidden[j] += change[j];
            }
        }
        norm(shape.blocks());
        softmax(PossibleOutcomes.of(planes, at), weights);
    }

    private void norm(int k) {
        float mean = 0;
        for (float value : hidden) {
            mean += value;
        }
        mean /= width;
        float variance = 0;
        for (float value : hidden) {
            variance += (value - mean) * (value - mean);
        }
        scales[k] = (float) (1 / Math.sqrt(variance / width + EPSILON));
        for (int j = 0; j < width; j++) {
            normed[k][j] = (hidden[j] - mean) * scales[k];
        }
    }

    private void findOn(int k) {
        int count = 0;
        for (int j = 0; j < width; j++) {
            if (inner[j] > 0) {
                on[k][count] = j;
                onValues[k][count++] = inner[j];
            }
        }
        onValues[k][count] = 1;
        onCounts[k] = count + 1;
    }

    private void softmax(int possible, float[] weights) {
        float[] last = normed[shape.blocks()];
        System.arraycopy(weights, shape.outputBias(), chances, 0, Outcomes.COUNT);
        for (int i = 0; i < width; i++) {
            int row = shape.output() + i * ResidualShape.OUTPUTS;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                chances[k] += last[i] * weights[row + k];
            }
        }
        float largest = Float.NEGATIVE_INFINITY;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            largest = (possible >> k & 1) != 0 ? Math.max(largest, chances[k]) : largest;
        }
        float sum = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[k] = (possible >> k & 1) != 0 ? (float) Math.exp(chances[k] - largest) : 0;
            sum += chances[k];
        }
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[k] /= sum;
        }
    }

    private void outputDeltas(int possible, float[] target, int at) {
        float mean = 0;
        float aim = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            mean += POINTS[k] * chances[k];
            aim += POINTS[k] * target[at + k];
            entropy -= chances[k] > 0 ? target[at + k] * Math.log(chances[k]) : 0;
        }
        squares += (double) (mean - aim) * (mean - aim);
        for (int k = 0; k < Outcomes.COUNT; k++) {
            outputDelta[k] = (possible >> k & 1) != 0
                    ? chances[k] - target[at + k] + (mean - aim) * chances[k] * (POINTS[k] - mean)
                    : 0;
        }
    }

    /** Derivatives by the last layer, and by what comes before its norm: those go to {@code ahead}. */
    private void throughOutput(float[] weights, float[] gradient) {
        float[] last = normed[shape.blocks()];
        for (int k = 0; k < Outcomes.COUNT; k++) {
            gradient[shape.outputBias() + k] += outputDelta[k];
        }
        for (int i = 0; i < width; i++) {
            int row = shape.output() + i * ResidualShape.OUTPUTS;
            float sum = 0;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                gradient[row + k] += last[i] * outputDelta[k];
                sum += weights[row + k] * outputDelta[k];
            }
            back[i] = sum;
        }
        java.util.Arrays.fill(ahead, 0);
        addThroughNorm(shape.blocks());
    }

    /** Derivatives by a block; {@code ahead} holds those by what comes behind it, and then those by what comes before. */
    private void throughBlock(int k, float[] weights, float[] turned, float[] gradient) {
        int count = onCounts[k] - 1;
        for (int r = 0; r < count; r++) {
            rows[r] = shape.b(k) / width + on[k][r];
        }
        kernel.dots(rows, count, weights, width, ahead, deltas);
        rows[count] = shape.bBias(k) / width;
        kernel.addGradient(rows, onValues[k], count + 1, ahead, width, gradient);
        int first = shape.a(k) / width;
        for (int r = 0; r < count; r++) {
            gradient[shape.aBias(k) + on[k][r]] += deltas[r];
            rows[r] = first + on[k][r];
        }
        kernel.addGradient(rows, deltas, count, normed[k], width, gradient);
        for (int r = 0; r < count; r++) {
            rows[r] = k * width + on[k][r];
        }
        kernel.forward(rows, deltas, count, turned, width, back);
        addThroughNorm(k);
    }

    private void addThroughNorm(int k) {
        float mean = 0;
        float along = 0;
        for (int j = 0; j < width; j++) {
            mean += back[j];
            along += back[j] * normed[k][j];
        }
        mean /= width;
        along /= width;
        for (int j = 0; j < width; j++) {
            ahead[j] += scales[k] * (back[j] - mean - normed[k][j] * along);
        }
    }
}
