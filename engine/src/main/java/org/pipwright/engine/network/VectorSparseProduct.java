package org.pipwright.engine.network;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorSpecies;

/**
 * Sparse products with the Vector API. Weights lie in panels of eight vectors of outputs, input by input, which is enough
 * sums to hide the latency of multiply-add; what is left at the end in panels of two. A panel stays in the core's cache
 * while all rows go through it. Unless the layer is large, six rows go through it together, with the inputs that are not zero in
 * any of them: rows are much alike, so these are half as many again as those of one row, and each weight that is read serves
 * six. Each sum goes through the inputs in order, and what a zero adds changes none, so it is the same whatever rows come with
 * it.
 */
final class VectorSparseProduct extends SparseProduct {
    private static final VectorSpecies<Float> SPECIES = VectorKernel.SPECIES;

    private static final int LENGTH = SPECIES.length();

    private static final int WIDE = 8 * LENGTH;

    private static final int NARROW = 2 * LENGTH;

    /** Rows at a time. */
    private static final int TOGETHER = 6;

    /** Of larger layers, which come from afar, long runs of weights for one row at a time are quicker. */
    private static final int LARGEST = 512 * 512;

    /** Number of wide panels, and of narrow ones behind them. */
    private final int wide;

    private final int narrow;
    private final float[] weights;
    private final float[] biases;

    VectorSparseProduct(Layer layer) {
        super(layer);
        wide = outputs / WIDE;
        narrow = (outputs - wide * WIDE) / NARROW;
        weights = new float[inputs * outputs];
        biases = layer.biases();
        int at = 0;
        for (int from = 0; from < outputs; ) {
            int length = from < wide * WIDE ? WIDE : NARROW;
            for (int i = 0; i < inputs; i++) {
                System.arraycopy(layer.weights(), i * outputs + from, weights, at, length);
                at += length;
            }
            from += length;
        }
    }

    @Override
    void add(float[] x, int rows, ActiveInputs active, float[] out) {
        int sixes = inputs * outputs <= LARGEST ? rows / TOGETHER : 0;
        active.clear();
        for (int group = 0; group < sixes; group++) {
            sum(x, group * TOGETHER * inputs, active.sums);
            active.add(active.sums, 0, inputs);
        }
        for (int r = sixes * TOGETHER; r < rows; r++) {
            active.add(x, r * inputs, inputs);
        }
        addSixes(x, active, sixes, out);
        addOthers(x, active, sixes, rows, out);
    }

    /** The sums of six rows: zero where all are, since none is below. */
    private void sum(float[] x, int from, float[] out) {
        for (int i = 0; i < inputs; i += LENGTH) {
            int at = from + i;
            FloatVector a = FloatVector.fromArray(SPECIES, x, at).add(FloatVector.fromArray(SPECIES, x, at + inputs));
            FloatVector b = FloatVector.fromArray(SPECIES, x, at + 2 * inputs)
                    .add(FloatVector.fromArray(SPECIES, x, at + 3 * inputs));
            FloatVector c = FloatVector.fromArray(SPECIES, x, at + 4 * inputs)
                    .add(FloatVector.fromArray(SPECIES, x, at + 5 * inputs));
            a.add(b).add(c).intoArray(out, i);
        }
    }

    private void addSixes(float[] x, ActiveInputs active, int sixes, float[] out) {
        for (int p = 0; p < wide; p++) {
            for (int group = 0; group < sixes; group++) {
                for (int k = 0; k < WIDE; k += NARROW) {
                    six(x, active, group, p * WIDE * inputs + k, WIDE, p * WIDE + k, out);
                }
            }
        }
        for (int from = wide * WIDE; from < outputs; from += NARROW) {
            for (int group = 0; group < sixes; group++) {
                six(x, active, group, from * inputs, NARROW, from, out);
            }
        }
    }

    private void six(float[] x, ActiveInputs active, int group, int weightsAt, int step, int from, float[] y) {
        float[] w = weights;
        int n = inputs;
        int m = outputs;
        int[] indices = active.indices;
        int xAt = group * TOGETHER * n;
        int yAt = group * TOGETHER * m + from;
        FloatVector a0 = before(y, yAt, from, 0);
        FloatVector a1 = before(y, yAt, from, LENGTH);
        FloatVector b0 = before(y, yAt + m, from, 0);
        FloatVector b1 = before(y, yAt + m, from, LENGTH);
        FloatVector c0 = before(y, yAt + 2 * m, from, 0);
        FloatVector c1 = before(y, yAt + 2 * m, from, LENGTH);
        FloatVector d0 = before(y, yAt + 3 * m, from, 0);
        FloatVector d1 = before(y, yAt + 3 * m, from, LENGTH);
        FloatVector e0 = before(y, yAt + 4 * m, from, 0);
        FloatVector e1 = before(y, yAt + 4 * m, from, LENGTH);
        FloatVector f0 = before(y, yAt + 5 * m, from, 0);
        FloatVector f1 = before(y, yAt + 5 * m, from, LENGTH);
        int to = active.to(group);
        for (int k = active.from(group); k < to; k++) {
            int at = weightsAt + indices[k] * step;
            int i = xAt + indices[k];
            FloatVector w0 = FloatVector.fromArray(SPECIES, w, at);
            FloatVector w1 = FloatVector.fromArray(SPECIES, w, at + LENGTH);
            FloatVector v = FloatVector.broadcast(SPECIES, x[i]);
            a0 = w0.fma(v, a0);
            a1 = w1.fma(v, a1);
            v = FloatVector.broadcast(SPECIES, x[i + n]);
            b0 = w0.fma(v, b0);
            b1 = w1.fma(v, b1);
            v = FloatVector.broadcast(SPECIES, x[i + 2 * n]);
            c0 = w0.fma(v, c0);
            c1 = w1.fma(v, c1);
            v = FloatVector.broadcast(SPECIES, x[i + 3 * n]);
            d0 = w0.fma(v, d0);
            d1 = w1.fma(v, d1);
            v = FloatVector.broadcast(SPECIES, x[i + 4 * n]);
            e0 = w0.fma(v, e0);
            e1 = w1.fma(v, e1);
            v = FloatVector.broadcast(SPECIES, x[i + 5 * n]);
            f0 = w0.fma(v, f0);
            f1 = w1.fma(v, f1);
        }
        a0.intoArray(y, yAt);
        a1.intoArray(y, yAt + LENGTH);
        b0.intoArray(y, yAt + m);
        b1.intoArray(y, yAt + m + LENGTH);
        c0.intoArray(y, yAt + 2 * m);
        c1.intoArray(y, yAt + 2 * m + LENGTH);
        d0.intoArray(y, yAt + 3 * m);
        d1.intoArray(y, yAt + 3 * m + LENGTH);
        e0.intoArray(y, yAt + 4 * m);
        e1.intoArray(y, yAt + 4 * m + LENGTH);
        f0.intoArray(y, yAt + 5 * m);
        f1.intoArray(y, yAt + 5 * m + LENGTH);
    }

    /** The rows after those that go in sixes, one at a time. */
    private void addOthers(float[] x, ActiveInputs active, int sixes, int rows, float[] out) {
        for (int p = 0; p < wide; p++) {
            for (int r = sixes * TOGETHER, list = sixes; r < rows; r++, list++) {
                wide(x, r * inputs, active, list, p, out, r * outputs + p * WIDE);
            }
        }
        for (int p = 0; p < narrow; p++) {
            int from = wide * WIDE + p * NARROW;
            for (int r = sixes * TOGETHER, list = sixes; r < rows; r++, list++) {
                narrow(x, r * inputs, active, list, from, out, r * outputs + from);
            }
        }
    }

    private void wide(float[] x, int xAt, ActiveInputs active, int list, int panel, float[] out, int outAt) {
        float[] w = weights;
        int[] indices = active.indices;
        int at = panel * inputs * WIDE;
        int biasAt = panel * WIDE;
        FloatVector a = before(out, outAt, biasAt, 0);
        FloatVector b = before(out, outAt, biasAt, LENGTH);
        FloatVector c = before(out, outAt, biasAt, 2 * LENGTH);
        FloatVector d = before(out, outAt, biasAt, 3 * LENGTH);
        FloatVector e = before(out, outAt, biasAt, 4 * LENGTH);
        FloatVector f = before(out, outAt, biasAt, 5 * LENGTH);
        FloatVector g = before(out, outAt, biasAt, 6 * LENGTH);
        FloatVector h = before(out, outAt, biasAt, 7 * LENGTH);
        int to = active.to(list);
        for (int k = active.from(list); k < to; k++) {
            int i = indices[k];
            int from = at + i * WIDE;
            FloatVector v = FloatVector.broadcast(SPECIES, x[xAt + i]);
            a = FloatVector.fromArray(SPECIES, w, from).fma(v, a);
            b = FloatVector.fromArray(SPECIES, w, from + LENGTH).fma(v, b);
            c = FloatVector.fromArray(SPECIES, w, from + 2 * LENGTH).fma(v, c);
            d = FloatVector.fromArray(SPECIES, w, from + 3 * LENGTH).fma(v, d);
            e = FloatVector.fromArray(SPECIES, w, from + 4 * LENGTH).fma(v, e);
            f = FloatVector.fromArray(SPECIES, w, from + 5 * LENGTH).fma(v, f);
            g = FloatVector.fromArray(SPECIES, w, from + 6 * LENGTH).fma(v, g);
            h = FloatVector.fromArray(SPECIES, w, from + 7 * LENGTH).fma(v, h);
        }
        a.intoArray(out, outAt);
        b.intoArray(out, outAt + LENGTH);
        c.intoArray(out, outAt + 2 * LENGTH);
        d.intoArray(out, outAt + 3 * LENGTH);
        e.intoArray(out, outAt + 4 * LENGTH);
        f.intoArray(out, outAt + 5 * LENGTH);
        g.intoArray(out, outAt + 6 * LENGTH);
        h.intoArray(out, outAt + 7 * LENGTH);
    }

    private void narrow(float[] x, int xAt, ActiveInputs active, int list, int first, float[] out, int outAt) {
        float[] w = weights;
        int[] indices = active.indices;
        int at = first * inputs;
        FloatVector a = before(out, outAt, first, 0);
        FloatVector b = before(out, outAt, first, LENGTH);
        int to = active.to(list);
        for (int k = active.from(list); k < to; k++) {
            int i = indices[k];
            FloatVector v = FloatVector.broadcast(SPECIES, x[xAt + i]);
            a = FloatVector.fromArray(SPECIES, w, at + i * NARROW).fma(v, a);
            b = FloatVector.fromArray(SPECIES, w, at + i * NARROW + LENGTH).fma(v, b);
        }
        a.intoArray(out, outAt);
        b.intoArray(out, outAt + LENGTH);
    }

    private FloatVector before(float[] out, int outAt, int biasAt, int lane) {
        return FloatVector.fromArray(SPECIES, biases, biasAt + lane)
                .add(FloatVector.fromArray(SPECIES, out, outAt + lane));
    }
}
