package org.pipwright.training.learner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.training.selfplay.Samples;

/**
 * Our own learner: Adam on masked cross-entropy, with gradients that touch only the rows of inputs that are not 0. Weights
 * of pairs, of which there are many and of which a batch has few, take a step only in batches that have them. A batch is cut
 * into a fixed number of shares whose gradients are added in order, so that results do not depend on the number
 * of threads.
 */
public final class SparseLearner implements Learner {
    /** Most shares of a batch: as many as the cores of a large desktop machine. */
    private static final int MAX_SHARES = 32;

    /** Fewest samples of a share: adding up the gradients of a smaller one costs more than it saves. */
    private static final int MIN_SAMPLES = 64;

    private final FeatureSet features;
    private final List<SparseLayer> layers = new ArrayList<>();
    private final List<SparsePass> passes = new ArrayList<>();
    private final Crew<Integer> workers;
    private final LayerKernel kernel;
    private final long averaged;
    private final int firstPair;
    private long steps;

    /**
     * A learner.
     *
     * @param start the network to begin with
     * @param averaged over about how many past steps the weights it gives are averaged, exponentially (Polyak and
     *     Juditsky, SIAM Journal on Control and Optimization 30 (1992), 838-855, average over all steps); 0 if not at all
     * @param workers who does the work; not closed by this learner
     */
    public SparseLearner(Network start, long averaged, Crew<Integer> workers) {
        this(start, averaged, workers, LayerKernel.fastest());
    }

    SparseLearner(Network start, long averaged, Crew<Integer> workers, LayerKernel kernel) {
        this.features = start.features();
        this.firstPair = features.inputs() - features.pairs();
        for (Layer layer : start.layers()) {
            layers.add(new SparseLayer(layer, averaged > 0, layers.isEmpty()));
        }
        this.averaged = averaged;
        this.workers = workers;
        this.kernel = kernel;
        for (int s = 0; s < MAX_SHARES; s++) {
            passes.add(new SparsePass(features, layers, kernel));
        }
    }

    @Override
    public double fit(Samples samples, int[] order, int from, int to, double rate) {
        double loss = gradients(samples, order, from, to);
        steps++;
        update(to - from, Adam.corrected(rate, steps));
        return loss / (to - from);
    }

    /** Leaves each share's gradients in its pass; returns the sum of the losses. */
    double gradients(Samples samples, int[] order, int from, int to) {
        long length = to - from;
        int shares = shares(to - from);
        double[] losses = new double[shares];
        workers.run(shares, (worker, share) -> {
            int shareFrom = (int) (from + length * share / shares);
            int shareTo = (int) (from + length * (share + 1) / shares);
            losses[share] = passes.get(share).run(samples, order, shareFrom, shareTo);
        });
        return Arrays.stream(losses).sum();
    }

    /** Depends on nothing but the size of the batch. */
    private static int shares(int batch) {
        return Math.max(1, Math.min(MAX_SHARES, batch / MIN_SAMPLES));
    }

    /** All layers at once, the first in parts of some rows each. */
    private void update(int batch, float rate) {
        int later = layers.size() - 1;
        workers.run(MAX_SHARES + later, (worker, task) -> {
            // The later layers first: they are indivisible.
            if (task < later) {
                SparseLayer layer = layers.get(task + 1);
                update(task + 1, 0, layer.weights.length, batch, rate);
                layer.transpose();
            } else {
                int rows = layers.get(0).inputs + 1;
                int part = task - later;
                updateRows(rows * part / MAX_SHARES, rows * (part + 1) / MAX_SHARES, batch, rate);
            }
        });
    }

    private void update(int l, int from, int to, int batch, float rate) {
        int shares = shares(batch);
        step(l, from, to, collect(l, from, to, shares, 1f / batch), rate);
    }

    /**
     * Rows of the first layer. One that no sample of the batch used has a gradient of 0, which need not be added up. One
     * that none ever used, as there are many with few checkers, has running means of 0 too and stays as it is. A pair's
     * steps only if the batch has the pair; until then its running means wait, and only its average moves on.
     */
    private void updateRows(int first, int end, int batch, float rate) {
        SparseLayer layer = layers.get(0);
        int shares = shares(batch);
        for (int row = first; row < end; row++) {
            int from = row * layer.width;
            int to = from + layer.width;
            boolean used = collectRow(row, from, to, shares, 1f / batch);
            layer.moving[row] |= used;
            boolean ofPair = row >= firstPair && row < layer.inputs;
            if (ofPair ? used : layer.moving[row]) {
                step(0, from, to, passes.get(0).gradients[0], rate);
            } else if (layer.average != null && layer.moving[row]) {
                average(layer, from, to);
            }
        }
    }

    private void step(int l, int from, int to, float[] gradient, float rate) {
        SparseLayer layer = layers.get(l);
        kernel.adam(layer.weights, layer.mean, layer.square, gradient, from, to, rate);
        Arrays.fill(gradient, from, to, 0);
        if (layer.average != null) {
            average(layer, from, to);
        }
    }

    /** At first a plain mean of all steps, or the random weights of the beginning would linger. */
    private void average(SparseLayer layer, int from, int to) {
        float share = 1f / Math.min(steps, averaged);
        for (int i = from; i < to; i++) {
            layer.average[i] += share * (layer.weights[i] - layer.average[i]);
        }
    }

    /** Adds all shares' gradients into the first one's, which is returned, times a scale; clears the others. */
    private float[] collect(int l, int from, int to, int shares, float scale) {
        float[] sum = passes.get(0).gradients[l];
        for (int s = 1; s < shares; s++) {
            addAndClear(sum, passes.get(s).gradients[l], from, to);
        }
        multiply(sum, from, to, scale);
        return sum;
    }

    /** The same for a row of the first layer; tells whether a share had used it. */
    private boolean collectRow(int row, int from, int to, int shares, float scale) {
        float[] sum = passes.get(0).gradients[0];
        boolean used = false;
        for (int s = 0; s < shares; s++) {
            SparsePass pass = passes.get(s);
            if (pass.touched[row]) {
                pass.touched[row] = false;
                used = true;
                if (s > 0) {
                    addAndClear(sum, pass.gradients[0], from, to);
                }
            }
        }
        if (used) {
            multiply(sum, from, to, scale);
        }
        return used;
    }

    private static void addAndClear(float[] sum, float[] gradient, int from, int to) {
        for (int i = from; i < to; i++) {
            sum[i] += gradient[i];
        }
        Arrays.fill(gradient, from, to, 0);
    }

    private static void multiply(float[] sum, int from, int to, float scale) {
        for (int i = from; i < to; i++) {
            sum[i] *= scale;
        }
    }

    /** The mean gradient of a layer over a batch, one row an input and one for the bias, without padding; for checks. */
    float[] takeGradient(int l, int batch) {
        SparseLayer layer = layers.get(l);
        float[] sum = collect(l, 0, layer.weights.length, shares(batch), 1f / batch);
        float[] packed = new float[(layer.inputs + 1) * layer.outputs];
        for (int row = 0; row <= layer.inputs; row++) {
            System.arraycopy(sum, row * layer.width, packed, row * layer.outputs, layer.outputs);
        }
        Arrays.fill(sum, 0);
        passes.forEach(pass -> Arrays.fill(pass.touched, false));
        return packed;
    }

    @Override
    public Network network() {
        return new Network(features, layers.stream().map(SparseLayer::toLayer).toList());
    }

    @Override
    public LearnerState state() {
        return new LearnerState(
                steps,
                layers.stream()
                        .flatMap(layer -> layer.arrays().stream().map(float[]::clone))
                        .toList());
    }

    @Override
    public void restore(LearnerState state) {
        int each = layers.get(0).arrays().size();
        if (state.arrays().size() != each * layers.size()) {
            throw new IllegalArgumentException("a network of " + layers.size() + " layers cannot be restored from "
                    + state.arrays().size() + " arrays");
        }
        for (int l = 0; l < layers.size(); l++) {
            layers.get(l).restore(state.arrays().subList(each * l, each * (l + 1)));
        }
        steps = state.steps();
    }

    /** Nothing to free. */
    @Override
    public void close() {}
}
