package org.pipwright.engine.network;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorSpecies;

/**
 * Sparse products with the Vector API. Weights lie in panels of eight vectors of outputs, input by input, which is enough
 * sums to hide the latency of multiply-add; what is left at the end in panels of two. A panel stays in the core's cache
 * while all rows go through it. Each sum goes through the inputs in order, so it is what {@link VectorProduct} would make.
 */
final class VectorSparseProduct extends SparseProduct {
    private static final VectorSpecies<Float> SPECIES = VectorKernel.SPECIES;

    private static final int LENGTH = SPECIES.length();

    private static final int WIDE = 8 * LENGTH;

    private static final int NARROW = 2 * LENGTH;

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
    void add(float[] x, ActiveInputs active, int rows, float[] out) {
        for (int p = 0; p < wide; p++) {
            for (int r = 0; r < rows; r++) {
                wide(x, r * inputs, active, r, p, out, r * outputs + p * WIDE);
            }
        }
        for (int p = 0; p < narrow; p++) {
            int first = wide * WIDE + p * NARROW;
            for (int r = 0; r < rows; r++) {
                narrow(x, r * inputs, active, r, first, out, r * outputs + first);
            }
        }
    }

    private void wide(float[] x, int xAt, ActiveInputs active, int row, int panel, float[] out, int outAt) {
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
        int to = active.to(row);
        for (int k = active.from(row); k < to; k++) {
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

    private void narrow(float[] x, int xAt, ActiveInputs active, int row, int first, float[] out, int outAt) {
        float[] w = weights;
        int[] indices = active.indices;
        int at = first * inputs;
        FloatVector a = before(out, outAt, first, 0);
        FloatVector b = before(out, outAt, first, LENGTH);
        int to = active.to(row);
        for (int k = active.from(row); k < to; k++) {
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
