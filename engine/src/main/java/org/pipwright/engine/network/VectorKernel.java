package org.pipwright.engine.network;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorSpecies;

/**
 * The kernel with the Vector API. Compiled by a step of its own and loaded by name, so that nothing else needs the
 * incubator module. Loops are unrolled by hand over several accumulators to hide the latency of multiply-add; lengths are
 * multiples of 16 floats, which every species divides. One input or four at once give the same bits: even and odd inputs
 * are summed apart in both.
 */
final class VectorKernel extends Kernel {
    static final VectorSpecies<Float> SPECIES =
            FloatVector.SPECIES_PREFERRED.length() > 16 ? FloatVector.SPECIES_512 : FloatVector.SPECIES_PREFERRED;

    private static final int LENGTH = SPECIES.length();

    @Override
    String name() {
        return "vectors of " + LENGTH + " floats";
    }

    @Override
    void accumulate(float[] base, float[] weights, int[] rows, float[] scales, int n, float floor, float[] out) {
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        int j = 0;
        for (; j + 8 * LENGTH <= base.length; j += 8 * LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, base, j);
            FloatVector b = FloatVector.fromArray(SPECIES, base, j + LENGTH);
            FloatVector c = FloatVector.fromArray(SPECIES, base, j + 2 * LENGTH);
            FloatVector d = FloatVector.fromArray(SPECIES, base, j + 3 * LENGTH);
            FloatVector e = FloatVector.fromArray(SPECIES, base, j + 4 * LENGTH);
            FloatVector f = FloatVector.fromArray(SPECIES, base, j + 5 * LENGTH);
            FloatVector g = FloatVector.fromArray(SPECIES, base, j + 6 * LENGTH);
            FloatVector h = FloatVector.fromArray(SPECIES, base, j + 7 * LENGTH);
            for (int r = 0; r < n; r++) {
                int at = rows[r] * base.length + j;
                FloatVector scale = FloatVector.broadcast(SPECIES, scales[r]);
                a = FloatVector.fromArray(SPECIES, weights, at).fma(scale, a);
                b = FloatVector.fromArray(SPECIES, weights, at + LENGTH).fma(scale, b);
                c = FloatVector.fromArray(SPECIES, weights, at + 2 * LENGTH).fma(scale, c);
                d = FloatVector.fromArray(SPECIES, weights, at + 3 * LENGTH).fma(scale, d);
                e = FloatVector.fromArray(SPECIES, weights, at + 4 * LENGTH).fma(scale, e);
                f = FloatVector.fromArray(SPECIES, weights, at + 5 * LENGTH).fma(scale, f);
                g = FloatVector.fromArray(SPECIES, weights, at + 6 * LENGTH).fma(scale, g);
                h = FloatVector.fromArray(SPECIES, weights, at + 7 * LENGTH).fma(scale, h);
            }
            a.max(least).intoArray(out, j);
            b.max(least).intoArray(out, j + LENGTH);
            c.max(least).intoArray(out, j + 2 * LENGTH);
            d.max(least).intoArray(out, j + 3 * LENGTH);
            e.max(least).intoArray(out, j + 4 * LENGTH);
            f.max(least).intoArray(out, j + 5 * LENGTH);
            g.max(least).intoArray(out, j + 6 * LENGTH);
            h.max(least).intoArray(out, j + 7 * LENGTH);
        }
        for (; j < base.length; j += LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, base, j);
            for (int r = 0; r < n; r++) {
                FloatVector scale = FloatVector.broadcast(SPECIES, scales[r]);
                a = FloatVector.fromArray(SPECIES, weights, rows[r] * base.length + j)
                        .fma(scale, a);
            }
            a.max(least).intoArray(out, j);
        }
    }

    @Override
    void dense(float[] x, PackedLayer layer, float floor, float[] out) {
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        float[] w = layer.weights;
        int width = layer.width;
        int inputs = Network.padded(layer.inputs);
        for (int j = 0; j < width; j += LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, layer.biases, j);
            FloatVector e = FloatVector.zero(SPECIES);
            int at = j;
            for (int i = 0; i < inputs; i += 2) {
                a = FloatVector.fromArray(SPECIES, w, at).fma(FloatVector.broadcast(SPECIES, x[i]), a);
                e = FloatVector.fromArray(SPECIES, w, at + width).fma(FloatVector.broadcast(SPECIES, x[i + 1]), e);
                at += 2 * width;
            }
            a.add(e).max(least).intoArray(out, j);
        }
    }

    @Override
    void largest(float[][] x, int rows, int length, float[] out) {
        for (int r = 0; r < rows; r += 4) {
            float[] x0 = x[r];
            float[] x1 = x[Math.min(r + 1, rows - 1)];
            float[] x2 = x[Math.min(r + 2, rows - 1)];
            float[] x3 = x[Math.min(r + 3, rows - 1)];
            float[] before = r == 0 ? x0 : out;
            for (int i = 0; i < length; i += LENGTH) {
                FloatVector a = FloatVector.fromArray(SPECIES, x0, i).max(FloatVector.fromArray(SPECIES, x1, i));
                FloatVector b = FloatVector.fromArray(SPECIES, x2, i).max(FloatVector.fromArray(SPECIES, x3, i));
                a.max(b).max(FloatVector.fromArray(SPECIES, before, i)).intoArray(out, i);
            }
        }
    }

    @Override
    void dense4(float[][] x, int first, ActiveOfGroup active, PackedLayer layer, float floor, float[][] out) {
        int j = 0;
        for (; j + 2 * LENGTH <= layer.width; j += 2 * LENGTH) {
            wide4(x, first, active.even, active.evens, layer, j, layer.biases, j, active.sums);
            wide4(x, first, active.odd, active.odds, layer, j, active.zeros, 0, active.sums2);
            add4(active, 2, floor, out, first, j);
        }
        if (j < layer.width) {
            narrow4(x, first, active.even, active.evens, layer, j, layer.biases, j, active.sums);
            narrow4(x, first, active.odd, active.odds, layer, j, active.zeros, 0, active.sums2);
            add4(active, 1, floor, out, first, j);
        }
    }

    /** Adds the sums of odd inputs to those of even ones, so many vectors for each of four. */
    private static void add4(ActiveOfGroup active, int vectors, float floor, float[][] out, int first, int j) {
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        for (int s = 0; s < 4; s++) {
            for (int k = 0; k < vectors; k++) {
                int at = (s * vectors + k) * LENGTH;
                FloatVector sum = FloatVector.fromArray(SPECIES, active.sums, at);
                sum.add(FloatVector.fromArray(SPECIES, active.sums2, at))
                        .max(least)
                        .intoArray(out[first + s], j + k * LENGTH);
            }
        }
    }

    /** Two vectors of sums of some inputs for each of four, on top of what they start with. */
    private static void wide4(
            float[][] x,
            int first,
            int[] indices,
            int n,
            PackedLayer layer,
            int j,
            float[] start,
            int startAt,
            float[] to) {
        FloatVector a = FloatVector.fromArray(SPECIES, start, startAt);
        FloatVector b = a;
        FloatVector c = a;
        FloatVector d = a;
        FloatVector e = FloatVector.fromArray(SPECIES, start, startAt + LENGTH);
        FloatVector f = e;
        FloatVector g = e;
        FloatVector h = e;
        float[] w = layer.weights;
        int width = layer.width;
        float[] x0 = x[first];
        float[] x1 = x[first + 1];
        float[] x2 = x[first + 2];
        float[] x3 = x[first + 3];
        for (int k = 0; k < n; k++) {
            int i = indices[k];
            int at = i * width + j;
            FloatVector v = FloatVector.fromArray(SPECIES, w, at);
            FloatVector v2 = FloatVector.fromArray(SPECIES, w, at + LENGTH);
            FloatVector s0 = FloatVector.broadcast(SPECIES, x0[i]);
            FloatVector s1 = FloatVector.broadcast(SPECIES, x1[i]);
            FloatVector s2 = FloatVector.broadcast(SPECIES, x2[i]);
            FloatVector s3 = FloatVector.broadcast(SPECIES, x3[i]);
            a = v.fma(s0, a);
            b = v.fma(s1, b);
            c = v.fma(s2, c);
            d = v.fma(s3, d);
            e = v2.fma(s0, e);
            f = v2.fma(s1, f);
            g = v2.fma(s2, g);
            h = v2.fma(s3, h);
        }
        a.intoArray(to, 0);
        e.intoArray(to, LENGTH);
        b.intoArray(to, 2 * LENGTH);
        f.intoArray(to, 3 * LENGTH);
        c.intoArray(to, 4 * LENGTH);
        g.intoArray(to, 5 * LENGTH);
        d.intoArray(to, 6 * LENGTH);
        h.intoArray(to, 7 * LENGTH);
    }

    /** The same with one vector. */
    private static void narrow4(
            float[][] x,
            int first,
            int[] indices,
            int n,
            PackedLayer layer,
            int j,
            float[] start,
            int startAt,
            float[] to) {
        FloatVector a = FloatVector.fromArray(SPECIES, start, startAt);
        FloatVector b = a;
        FloatVector c = a;
        FloatVector d = a;
        float[] w = layer.weights;
        int width = layer.width;
        float[] x0 = x[first];
        float[] x1 = x[first + 1];
        float[] x2 = x[first + 2];
        float[] x3 = x[first + 3];
        for (int k = 0; k < n; k++) {
            int i = indices[k];
            FloatVector v = FloatVector.fromArray(SPECIES, w, i * width + j);
            a = v.fma(FloatVector.broadcast(SPECIES, x0[i]), a);
            b = v.fma(FloatVector.broadcast(SPECIES, x1[i]), b);
            c = v.fma(FloatVector.broadcast(SPECIES, x2[i]), c);
            d = v.fma(FloatVector.broadcast(SPECIES, x3[i]), d);
        }
        a.intoArray(to, 0);
        b.intoArray(to, LENGTH);
        c.intoArray(to, 2 * LENGTH);
        d.intoArray(to, 3 * LENGTH);
    }

    @Override
    Product product(Layer layer) {
        return layer.outputs() <= VectorDots.MAX ? new VectorDots(layer) : new VectorProduct(layer);
    }

    @Override
    SparseProduct sparseProduct(Layer layer) {
        return new VectorSparseProduct(layer);
    }

    @Override
    void normalize(float[] x, int rows, int width, float[] out) {
        float[] lanes = new float[Network.LANES];
        for (int from = 0; from < rows * width; from += width) {
            float mean = sum(x, from, width, lanes) / width;
            float variance = squares(x, from, width, mean, lanes) / width;
            float scale = (float) (1 / Math.sqrt(variance + ResidualNetwork.EPSILON));
            FloatVector center = FloatVector.broadcast(SPECIES, mean);
            FloatVector factor = FloatVector.broadcast(SPECIES, scale);
            for (int i = from; i < from + width; i += LENGTH) {
                FloatVector.fromArray(SPECIES, x, i).sub(center).mul(factor).intoArray(out, i);
            }
        }
    }

    private static float sum(float[] x, int from, int width, float[] lanes) {
        FloatVector a = FloatVector.zero(SPECIES);
        FloatVector b = a;
        for (int i = from; i < from + width; i += 2 * LENGTH) {
            a = a.add(FloatVector.fromArray(SPECIES, x, i));
            b = b.add(FloatVector.fromArray(SPECIES, x, i + LENGTH));
        }
        return VectorSum.of(a.add(b), lanes);
    }

    private static float squares(float[] x, int from, int width, float mean, float[] lanes) {
        FloatVector center = FloatVector.broadcast(SPECIES, mean);
        FloatVector a = FloatVector.zero(SPECIES);
        FloatVector b = a;
        for (int i = from; i < from + width; i += 2 * LENGTH) {
            FloatVector off = FloatVector.fromArray(SPECIES, x, i).sub(center);
            FloatVector off2 = FloatVector.fromArray(SPECIES, x, i + LENGTH).sub(center);
            a = off.fma(off, a);
            b = off2.fma(off2, b);
        }
        return VectorSum.of(a.add(b), lanes);
    }
}
