package org.pipwright.training.cuda;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.PlaceCode;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.learner.LayerKernel;

/**
 * One thread's buffers for lessons of a residual network: forward, and back to the derivatives. All that comes behind max(0, x)
 * costs only what is not 0 there, nine numbers of ten in a network that has learned.
 *
 * <p>Some lessons go through each matrix together, some columns of it at a time, which stay in the core's cache meanwhile. Each sum
 * goes through the lessons, or the inputs, in order.
 *
 * <p>All tensors but the last layer's lie at multiples of the width in the flat array of weights, so it is one matrix with
 * rows of the width, and a tensor's rows follow each other; biases are rows too. Derivatives lie likewise, but those of a
 * block's first matrix are the other way round: its columns are rows, since few of its outputs have any.
 */
final class ThreadPass {
    /** Most lessons that go through together, a multiple of four. */
    static final int MAX_LESSONS = 64;

    /** Columns of a matrix at a time: of 384 rows, 200 kB. Divides every width. */
    private static final int COLUMNS = 128;

    private static final float[] POINTS = {1, 2, 3, -1, -2, -3};
    private static final float EPSILON = 1e-5f;

    private final ResidualShape shape;
    private final int width;
    private final LayerKernel kernel;

    /** Features that are not 0, and a 1 for the bias. */
    private final SparseRows inputs = new SparseRows(MAX_LESSONS, ResidualShape.INPUTS + 1);

    private final int[] possible = new int[MAX_LESSONS];

    /** Numbers behind each norm, and what it multiplied them by. */
    private final float[][] normed;

    private final float[][] scales;

    /** Numbers behind max(0, x) of each block. */
    private final SparseRows[] on;

    /** Rows of numbers, one a lesson: what blocks change, and what comes before max(0, x). */
    private final float[] hidden;

    private final float[] inner;

    /** Derivatives by what comes before max(0, x), where it is not 0. */
    private final float[] deltas;

    /** Derivatives by what blocks change, and by what is behind a norm. */
    private final float[] ahead;

    private final float[] back;
    private final float[] chances = new float[MAX_LESSONS * Outcomes.COUNT];
    private final float[] outputDelta = new float[Outcomes.COUNT];

    /** Numbers of all lessons, and a 1 for each. */
    private final int[] all = new int[MAX_LESSONS];

    private final float[] ones = new float[MAX_LESSONS];
    private double entropy;
    private double squares;

    ThreadPass(ResidualShape shape, LayerKernel kernel) {
        this.shape = shape;
        this.kernel = kernel;
        width = shape.width();
        int blocks = shape.blocks();
        normed = new float[blocks + 1][MAX_LESSONS * width];
        scales = new float[blocks + 1][MAX_LESSONS];
        on = new SparseRows[blocks];
        Arrays.setAll(on, k -> new SparseRows(MAX_LESSONS, width));
        hidden = new float[MAX_LESSONS * width];
        inner = new float[MAX_LESSONS * width];
        deltas = new float[MAX_LESSONS * width];
        ahead = new float[MAX_LESSONS * width];
        back = new float[MAX_LESSONS * width];
        Arrays.setAll(all, lesson -> lesson);
        Arrays.fill(ones, 1);
    }

    /** What lessons of a list are learned from: the list's positions and targets, and which of them, from one to another. */
    record Drawn(int[] planes, float[] targets, int[] drawn, int from, int to) {
        int count() {
            return to - from;
        }

        int planesAt(int lesson) {
            return Planes.STRIDE * drawn[from + lesson];
        }

        int targetAt(int lesson) {
            return Outcomes.COUNT * drawn[from + lesson];
        }
    }

    /**
     * Adds the derivatives of lessons, at most {@link #MAX_LESSONS}, by every weight to a gradient.
     *
     * @param turned the blocks' first matrices, one after another, the other way round
     */
    void add(Drawn lessons, float[] weights, float[] turned, float[] gradient) {
        int count = lessons.count();
        findInputs(lessons);
        forward(count, weights);
        for (int lesson = 0; lesson < count; lesson++) {
            softmax(lesson, weights);
            outputDeltas(lesson, lessons.targets(), lessons.targetAt(lesson));
            throughOutput(lesson, weights, gradient);
        }
        for (int k = shape.blocks() - 1; k >= 0; k--) {
            throughBlock(k, count, weights, turned, gradient);
        }
        inputs.turn(count, inputs.values);
        addTurned(inputs, ahead, gradient, 0);
    }

    /** The sums of cross-entropy and of squared errors of equity since the last call. */
    double[] losses() {
        double[] losses = {entropy, squares};
        entropy = 0;
        squares = 0;
        return losses;
    }

    private void findInputs(Drawn lessons) {
        inputs.clear();
        for (int lesson = 0; lesson < lessons.count(); lesson++) {
            int[] planes = lessons.planes();
            int at = lessons.planesAt(lesson);
            int next = 0;
            for (int side = at; side <= at + Planes.SIDE; side += Planes.SIDE) {
                for (int place = 0; place < Planes.PLACES; place++) {
                    int checkers = Planes.count(planes, side, place);
                    for (int k = 0; k < PlaceCode.LENGTH; k++) {
                        inputs.add(next++, PlaceCode.value(place, checkers, k));
                    }
                }
            }
            for (int side = at; side <= at + Planes.SIDE; side += Planes.SIDE) {
                inputs.add(next++, Planes.pips(planes, side) / 167f);
                inputs.add(next++, Planes.contact(planes, at) ? 1 : 0);
            }
            inputs.add(shape.inputBias() / width, 1);
            inputs.end(lesson);
            possible[lesson] = PossibleOutcomes.of(planes, at);
        }
    }

    private void forward(int count, float[] weights) {
        Arrays.fill(hidden, 0);
        addListed(inputs, inputs.values, count, weights, 0, hidden);
        for (int k = 0; k < shape.blocks(); k++) {
            norm(k, count);
            fill(inner, count, weights, shape.aBias(k));
            for (int lesson = 0; lesson < count; lesson += 4) {
                kernel.addProducts(normed[k], lesson, weights, shape.a(k), width, inner);
            }
            findOn(on[k], count);
            addListed(on[k], on[k].values, count, weights, shape.b(k), hidden);
            for (int lesson = 0; lesson < count; lesson++) {
                for (int j = 0; j < width; j++) {
                    hidden[lesson * width + j] += weights[shape.bBias(k) + j];
                }
            }
        }
        norm(shape.blocks(), count);
    }

    private void fill(float[] rows, int count, float[] weights, int at) {
        for (int lesson = 0; lesson < count; lesson++) {
            System.arraycopy(weights, at, rows, lesson * width, width);
        }
    }

    /** Adds to a row of each lesson those of a matrix whose inputs are listed, times numbers that lie as their values do. */
    private void addListed(SparseRows rows, float[] numbers, int count, float[] matrix, int at, float[] out) {
        for (int column = 0; column < width; column += COLUMNS) {
            for (int lesson = 0; lesson < count; lesson++) {
                int from = rows.starts[lesson];
                int to = rows.starts[lesson + 1];
                kernel.addRows(rows.inputs, numbers, from, to, matrix, at, width, column, COLUMNS, out, lesson * width);
            }
        }
    }

    /** Adds to a gradient's row of each input the lessons' derivatives times the input's turned values. */
    private void addTurned(SparseRows rows, float[] derivatives, float[] gradient, int at) {
        int[] starts = rows.turnedStarts;
        for (int column = 0; column < width; column += COLUMNS) {
            for (int i = 0; i + 1 < starts.length; i++) {
                if (starts[i] < starts[i + 1]) {
                    kernel.addRows(
                            rows.lessons,
                            rows.turnedValues,
                            starts[i],
                            starts[i + 1],
                            derivatives,
                            0,
                            width,
                            column,
                            COLUMNS,
                            gradient,
                            at + i * width);
                }
            }
        }
    }

    private void norm(int k, int count) {
        float[] out = normed[k];
        for (int lesson = 0; lesson < count; lesson++) {
            int at = lesson * width;
            float mean = kernel.sum(hidden, at, width) / width;
            for (int j = at; j < at + width; j++) {
                out[j] = hidden[j] - mean;
            }
            float variance = kernel.dot(out, at, out, at, width) / width;
            float scale = (float) (1 / Math.sqrt(variance + EPSILON));
            for (int j = at; j < at + width; j++) {
                out[j] *= scale;
            }
            scales[k][lesson] = scale;
        }
    }

    private void findOn(SparseRows rows, int count) {
        rows.clear();
        for (int lesson = 0; lesson < count; lesson++) {
            for (int j = 0; j < width; j++) {
                rows.add(j, Math.max(0, inner[lesson * width + j]));
            }
            rows.end(lesson);
        }
    }

    private void softmax(int lesson, float[] weights) {
        float[] last = normed[shape.blocks()];
        int at = lesson * Outcomes.COUNT;
        System.arraycopy(weights, shape.outputBias(), chances, at, Outcomes.COUNT);
        for (int i = 0; i < width; i++) {
            int row = shape.output() + i * ResidualShape.OUTPUTS;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                chances[at + k] += last[lesson * width + i] * weights[row + k];
            }
        }
        float largest = Float.NEGATIVE_INFINITY;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            largest = isPossible(lesson, k) ? Math.max(largest, chances[at + k]) : largest;
        }
        float sum = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[at + k] = isPossible(lesson, k) ? (float) Math.exp(chances[at + k] - largest) : 0;
            sum += chances[at + k];
        }
        for (int k = 0; k < Outcomes.COUNT; k++) {
            chances[at + k] /= sum;
        }
    }

    private boolean isPossible(int lesson, int outcome) {
        return (possible[lesson] >> outcome & 1) != 0;
    }

    private void outputDeltas(int lesson, float[] target, int at) {
        int from = lesson * Outcomes.COUNT;
        float mean = 0;
        float aim = 0;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            float chance = chances[from + k];
            mean += POINTS[k] * chance;
            aim += POINTS[k] * target[at + k];
            entropy -= chance > 0 ? target[at + k] * Math.log(chance) : 0;
        }
        squares += (double) (mean - aim) * (mean - aim);
        for (int k = 0; k < Outcomes.COUNT; k++) {
            float chance = chances[from + k];
            outputDelta[k] =
                    isPossible(lesson, k) ? chance - target[at + k] + (mean - aim) * chance * (POINTS[k] - mean) : 0;
        }
    }

    /** Derivatives by the last layer, and by what comes before its norm: those go to {@code ahead}. */
    private void throughOutput(int lesson, float[] weights, float[] gradient) {
        float[] last = normed[shape.blocks()];
        for (int k = 0; k < Outcomes.COUNT; k++) {
            gradient[shape.outputBias() + k] += outputDelta[k];
        }
        for (int i = 0; i < width; i++) {
            int row = shape.output() + i * ResidualShape.OUTPUTS;
            float value = last[lesson * width + i];
            float sum = 0;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                gradient[row + k] += value * outputDelta[k];
                sum += weights[row + k] * outputDelta[k];
            }
            back[lesson * width + i] = sum;
        }
        Arrays.fill(ahead, lesson * width, (lesson + 1) * width, 0);
        addThroughNorm(shape.blocks(), lesson);
    }

    /** Derivatives by a block; {@code ahead} holds those by what comes behind it, and then those by what comes before. */
    private void throughBlock(int k, int count, float[] weights, float[] turned, float[] gradient) {
        SparseRows rows = on[k];
        for (int lesson = 0; lesson < count; lesson++) {
            for (int r = rows.starts[lesson]; r < rows.starts[lesson + 1]; r++) {
                int row = shape.b(k) + rows.inputs[r] * width;
                deltas[r] = kernel.dot(weights, row, ahead, lesson * width, width);
                gradient[shape.aBias(k) + rows.inputs[r]] += deltas[r];
            }
        }
        kernel.addRows(all, ones, 0, count, ahead, 0, width, 0, width, gradient, shape.bBias(k));
        rows.turn(count, rows.values);
        addTurned(rows, ahead, gradient, shape.b(k));
        rows.turn(count, deltas);
        addTurned(rows, normed[k], gradient, shape.a(k));
        Arrays.fill(back, 0, count * width, 0);
        addListed(rows, deltas, count, turned, k * width * width, back);
        for (int lesson = 0; lesson < count; lesson++) {
            addThroughNorm(k, lesson);
        }
    }

    private void addThroughNorm(int k, int lesson) {
        int at = lesson * width;
        float[] behind = normed[k];
        float mean = kernel.sum(back, at, width) / width;
        float along = kernel.dot(back, at, behind, at, width) / width;
        float scale = scales[k][lesson];
        for (int j = at; j < at + width; j++) {
            ahead[j] += scale * (back[j] - mean - behind[j] * along);
        }
    }
}
