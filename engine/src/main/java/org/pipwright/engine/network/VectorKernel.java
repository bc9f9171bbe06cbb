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
    void accumulate(float[] base, float[][] rows, float[] scales, int n, float floor, float[] out) {
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        int j = 0;
        for (; j + 4 * LENGTH <= base.length; j += 4 * LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, base, j);
            FloatVector b = FloatVector.fromArray(SPECIES, base, j + LENGTH);
            FloatVector c = FloatVector.fromArray(SPECIES, base, j + 2 * LENGTH);
            FloatVector d = FloatVector.fromArray(SPECIES, base, j + 3 * LENGTH);
            for (int r = 0; r < n; r++) {
                float[] row = rows[r];
                FloatVector scale = FloatVector.broadcast(SPECIES, scales[r]);
                a = FloatVector.fromArray(SPECIES, row, j).fma(scale, a);
                b = FloatVector.fromArray(SPECIES, row, j + LENGTH).fma(scale, b);
                c = FloatVector.fromArray(SPECIES, row, j + 2 * LENGTH).fma(scale, c);
                d = FloatVector.fromArray(SPECIES, row, j + 3 * LENGTH).fma(scale, d);
            }
            a.max(least).intoArray(out, j);
            b.max(least).intoArray(out, j + LENGTH);
            c.max(least).intoArray(out, j + 2 * LENGTH);
            d.max(least).intoArray(out, j + 3 * LENGTH);
        }
        for (; j < base.length; j += LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, base, j);
            for (int r = 0; r < n; r++) {
                a = FloatVector.fromArray(SPECIES, rows[r], j).fma(FloatVector.broadcast(SPECIES, scales[r]), a);
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
    void dense4(float[][] x, PackedLayer layer, float floor, float[][] out) {
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        float[] w = layer.weights;
        int width = layer.width;
        int inputs = Network.padded(layer.inputs);
        float[] x0 = x[0];
        float[] x1 = x[1];
        float[] x2 = x[2];
        float[] x3 = x[3];
        for (int j = 0; j < width; j += LENGTH) {
            FloatVector bias = FloatVector.fromArray(SPECIES, layer.biases, j);
            FloatVector a = bias;
            FloatVector b = bias;
            FloatVector c = bias;
            FloatVector d = bias;
            FloatVector e = FloatVector.zero(SPECIES);
            FloatVector f = FloatVector.zero(SPECIES);
            FloatVector g = FloatVector.zero(SPECIES);
            FloatVector h = FloatVector.zero(SPECIES);
            int at = j;
            for (int i = 0; i < inputs; i += 2) {
                FloatVector w0 = FloatVector.fromArray(SPECIES, w, at);
                FloatVector w1 = FloatVector.fromArray(SPECIES, w, at + width);
                a = w0.fma(FloatVector.broadcast(SPECIES, x0[i]), a);
                b = w0.fma(FloatVector.broadcast(SPECIES, x1[i]), b);
                c = w0.fma(FloatVector.broadcast(SPECIES, x2[i]), c);
                d = w0.fma(FloatVector.broadcast(SPECIES, x3[i]), d);
                e = w1.fma(FloatVector.broadcast(SPECIES, x0[i + 1]), e);
                f = w1.fma(FloatVector.broadcast(SPECIES, x1[i + 1]), f);
                g = w1.fma(FloatVector.broadcast(SPECIES, x2[i + 1]), g);
                h = w1.fma(FloatVector.broadcast(SPECIES, x3[i + 1]), h);
                at += 2 * width;
            }
            a.add(e).max(least).intoArray(out[0], j);
            b.add(f).max(least).intoArray(out[1], j);
            c.add(g).max(least).intoArray(out[2], j);
            d.add(h).max(least).intoArray(out[3], j);
        }
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
