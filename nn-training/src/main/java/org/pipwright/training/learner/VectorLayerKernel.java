package org.pipwright.training.learner;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/**
 * The kernel with the Vector API; compiled by a step of its own and loaded by name. Sums are kept in registers: up to four
 * vectors of a row at a time. Every species up to 512 bits divides the width.
 */
final class VectorLayerKernel extends LayerKernel {
    private static final VectorSpecies<Float> SPECIES =
            FloatVector.SPECIES_PREFERRED.length() > LANES ? FloatVector.SPECIES_512 : FloatVector.SPECIES_PREFERRED;

    private static final int LENGTH = SPECIES.length();

    @Override
    public void forward(int[] index, float[] value, int n, float[] weights, int width, float[] out) {
        int j = 0;
        for (; j + 4 * LENGTH <= width; j += 4 * LENGTH) {
            FloatVector a = FloatVector.zero(SPECIES);
            FloatVector b = FloatVector.zero(SPECIES);
            FloatVector c = FloatVector.zero(SPECIES);
            FloatVector d = FloatVector.zero(SPECIES);
            for (int r = 0; r < n; r++) {
                int at = index[r] * width + j;
                FloatVector scale = FloatVector.broadcast(SPECIES, value[r]);
                a = FloatVector.fromArray(SPECIES, weights, at).fma(scale, a);
                b = FloatVector.fromArray(SPECIES, weights, at + LENGTH).fma(scale, b);
                c = FloatVector.fromArray(SPECIES, weights, at + 2 * LENGTH).fma(scale, c);
                d = FloatVector.fromArray(SPECIES, weights, at + 3 * LENGTH).fma(scale, d);
            }
            a.intoArray(out, j);
            b.intoArray(out, j + LENGTH);
            c.intoArray(out, j + 2 * LENGTH);
            d.intoArray(out, j + 3 * LENGTH);
        }
        for (; j < width; j += LENGTH) {
            forwardOne(index, value, n, weights, width, out, j);
        }
    }

    /** One vector of the row; even and odd inputs apart, to hide the latency of multiply-add. */
    private static void forwardOne(int[] index, float[] value, int n, float[] weights, int width, float[] out, int j) {
        FloatVector a = FloatVector.zero(SPECIES);
        FloatVector b = FloatVector.zero(SPECIES);
        int r = 0;
        for (; r + 2 <= n; r += 2) {
            a = FloatVector.fromArray(SPECIES, weights, index[r] * width + j)
                    .fma(FloatVector.broadcast(SPECIES, value[r]), a);
            b = FloatVector.fromArray(SPECIES, weights, index[r + 1] * width + j)
                    .fma(FloatVector.broadcast(SPECIES, value[r + 1]), b);
        }
        for (; r < n; r++) {
            a = FloatVector.fromArray(SPECIES, weights, index[r] * width + j)
                    .fma(FloatVector.broadcast(SPECIES, value[r]), a);
        }
        a.add(b).intoArray(out, j);
    }

    @Override
    public void addGradient(int[] index, float[] value, int n, float[] delta, int width, float[] gradient) {
        int j = 0;
        for (; j + 4 * LENGTH <= width; j += 4 * LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, delta, j);
            FloatVector b = FloatVector.fromArray(SPECIES, delta, j + LENGTH);
            FloatVector c = FloatVector.fromArray(SPECIES, delta, j + 2 * LENGTH);
            FloatVector d = FloatVector.fromArray(SPECIES, delta, j + 3 * LENGTH);
            for (int r = 0; r < n; r++) {
                int at = index[r] * width + j;
                FloatVector scale = FloatVector.broadcast(SPECIES, value[r]);
                a.fma(scale, FloatVector.fromArray(SPECIES, gradient, at)).intoArray(gradient, at);
                b.fma(scale, FloatVector.fromArray(SPECIES, gradient, at + LENGTH))
                        .intoArray(gradient, at + LENGTH);
                c.fma(scale, FloatVector.fromArray(SPECIES, gradient, at + 2 * LENGTH))
                        .intoArray(gradient, at + 2 * LENGTH);
                d.fma(scale, FloatVector.fromArray(SPECIES, gradient, at + 3 * LENGTH))
                        .intoArray(gradient, at + 3 * LENGTH);
            }
        }
        for (; j < width; j += LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, delta, j);
            for (int r = 0; r < n; r++) {
                int at = index[r] * width + j;
                a.fma(FloatVector.broadcast(SPECIES, value[r]), FloatVector.fromArray(SPECIES, gradient, at))
                        .intoArray(gradient, at);
            }
        }
    }

    /** Eight vectors of the row at a time. */
    @Override
    public void addRows(
            int[] index,
            float[] value,
            int from,
            int to,
            float[] matrix,
            int at,
            int width,
            int column,
            int columns,
            float[] out,
            int outAt) {
        int j = column;
        for (; j + 8 * LENGTH <= column + columns; j += 8 * LENGTH) {
            int o = outAt + j;
            FloatVector a = FloatVector.fromArray(SPECIES, out, o);
            FloatVector b = FloatVector.fromArray(SPECIES, out, o + LENGTH);
            FloatVector c = FloatVector.fromArray(SPECIES, out, o + 2 * LENGTH);
            FloatVector d = FloatVector.fromArray(SPECIES, out, o + 3 * LENGTH);
            FloatVector e = FloatVector.fromArray(SPECIES, out, o + 4 * LENGTH);
            FloatVector f = FloatVector.fromArray(SPECIES, out, o + 5 * LENGTH);
            FloatVector g = FloatVector.fromArray(SPECIES, out, o + 6 * LENGTH);
            FloatVector h = FloatVector.fromArray(SPECIES, out, o + 7 * LENGTH);
            for (int r = from; r < to; r++) {
                int row = at + index[r] * width + j;
                FloatVector scale = FloatVector.broadcast(SPECIES, value[r]);
                a = FloatVector.fromArray(SPECIES, matrix, row).fma(scale, a);
                b = FloatVector.fromArray(SPECIES, matrix, row + LENGTH).fma(scale, b);
                c = FloatVector.fromArray(SPECIES, matrix, row + 2 * LENGTH).fma(scale, c);
                d = FloatVector.fromArray(SPECIES, matrix, row + 3 * LENGTH).fma(scale, d);
                e = FloatVector.fromArray(SPECIES, matrix, row + 4 * LENGTH).fma(scale, e);
                f = FloatVector.fromArray(SPECIES, matrix, row + 5 * LENGTH).fma(scale, f);
                g = FloatVector.fromArray(SPECIES, matrix, row + 6 * LENGTH).fma(scale, g);
                h = FloatVector.fromArray(SPECIES, matrix, row + 7 * LENGTH).fma(scale, h);
            }
            a.intoArray(out, o);
            b.intoArray(out, o + LENGTH);
            c.intoArray(out, o + 2 * LENGTH);
            d.intoArray(out, o + 3 * LENGTH);
            e.intoArray(out, o + 4 * LENGTH);
            f.intoArray(out, o + 5 * LENGTH);
            g.intoArray(out, o + 6 * LENGTH);
            h.intoArray(out, o + 7 * LENGTH);
        }
        for (; j < column + columns; j += LENGTH) {
            FloatVector a = FloatVector.fromArray(SPECIES, out, outAt + j);
            for (int r = from; r < to; r++) {
                a = FloatVector.fromArray(SPECIES, matrix, at + index[r] * width + j)
                        .fma(FloatVector.broadcast(SPECIES, value[r]), a);
            }
            a.intoArray(out, outAt + j);
        }
    }

    /** Three vectors of four rows at a time: each weight that is read serves four rows. */
    @Override
    public void addProducts(float[] x, int first, float[] matrix, int at, int width, float[] out) {
        int j = 0;
        for (; j + 3 * LENGTH <= width; j += 3 * LENGTH) {
            addThree(x, first * width, matrix, at + j, width, out, first * width + j);
        }
        for (; j < width; j += LENGTH) {
            addOne(x, first * width, matrix, at + j, width, out, first * width + j);
        }
    }

    private static void addThree(float[] x, int xAt, float[] matrix, int at, int width, float[] out, int o) {
        FloatVector a0 = FloatVector.fromArray(SPECIES, out, o);
        FloatVector a1 = FloatVector.fromArray(SPECIES, out, o + LENGTH);
        FloatVector a2 = FloatVector.fromArray(SPECIES, out, o + 2 * LENGTH);
        FloatVector b0 = FloatVector.fromArray(SPECIES, out, o + width);
        FloatVector b1 = FloatVector.fromArray(SPECIES, out, o + width + LENGTH);
        FloatVector b2 = FloatVector.fromArray(SPECIES, out, o + width + 2 * LENGTH);
        FloatVector c0 = FloatVector.fromArray(SPECIES, out, o + 2 * width);
        FloatVector c1 = FloatVector.fromArray(SPECIES, out, o + 2 * width + LENGTH);
        FloatVector c2 = FloatVector.fromArray(SPECIES, out, o + 2 * width + 2 * LENGTH);
        FloatVector d0 = FloatVector.fromArray(SPECIES, out, o + 3 * width);
        FloatVector d1 = FloatVector.fromArray(SPECIES, out, o + 3 * width + LENGTH);
        FloatVector d2 = FloatVector.fromArray(SPECIES, out, o + 3 * width + 2 * LENGTH);
        for (int r = 0; r < width; r++) {
            int row = at + r * width;
            FloatVector w0 = FloatVector.fromArray(SPECIES, matrix, row);
            FloatVector w1 = FloatVector.fromArray(SPECIES, matrix, row + LENGTH);
            FloatVector w2 = FloatVector.fromArray(SPECIES, matrix, row + 2 * LENGTH);
            FloatVector v = FloatVector.broadcast(SPECIES, x[xAt + r]);
            a0 = w0.fma(v, a0);
            a1 = w1.fma(v, a1);
            a2 = w2.fma(v, a2);
            v = FloatVector.broadcast(SPECIES, x[xAt + r + width]);
            b0 = w0.fma(v, b0);
            b1 = w1.fma(v, b1);
            b2 = w2.fma(v, b2);
            v = FloatVector.broadcast(SPECIES, x[xAt + r + 2 * width]);
            c0 = w0.fma(v, c0);
            c1 = w1.fma(v, c1);
            c2 = w2.fma(v, c2);
            v = FloatVector.broadcast(SPECIES, x[xAt + r + 3 * width]);
            d0 = w0.fma(v, d0);
            d1 = w1.fma(v, d1);
            d2 = w2.fma(v, d2);
        }
        a0.intoArray(out, o);
        a1.intoArray(out, o + LENGTH);
        a2.intoArray(out, o + 2 * LENGTH);
        b0.intoArray(out, o + width);
        b1.intoArray(out, o + width + LENGTH);
        b2.intoArray(out, o + width + 2 * LENGTH);
        c0.intoArray(out, o + 2 * width);
        c1.intoArray(out, o + 2 * width + LENGTH);
        c2.intoArray(out, o + 2 * width + 2 * LENGTH);
        d0.intoArray(out, o + 3 * width);
        d1.intoArray(out, o + 3 * width + LENGTH);
        d2.intoArray(out, o + 3 * width + 2 * LENGTH);
    }

    private static void addOne(float[] x, int xAt, float[] matrix, int at, int width, float[] out, int o) {
        FloatVector a = FloatVector.fromArray(SPECIES, out, o);
        FloatVector b = FloatVector.fromArray(SPECIES, out, o + width);
        FloatVector c = FloatVector.fromArray(SPECIES, out, o + 2 * width);
        FloatVector d = FloatVector.fromArray(SPECIES, out, o + 3 * width);
        for (int r = 0; r < width; r++) {
            FloatVector w = FloatVector.fromArray(SPECIES, matrix, at + r * width);
            a = w.fma(FloatVector.broadcast(SPECIES, x[xAt + r]), a);
            b = w.fma(FloatVector.broadcast(SPECIES, x[xAt + r + width]), b);
            c = w.fma(FloatVector.broadcast(SPECIES, x[xAt + r + 2 * width]), c);
            d = w.fma(FloatVector.broadcast(SPECIES, x[xAt + r + 3 * width]), d);
        }
        a.intoArray(out, o);
        b.intoArray(out, o + width);
        c.intoArray(out, o + 2 * width);
        d.intoArray(out, o + 3 * width);
    }

    /** Four sums, to hide the latency of multiply-add. */
    @Override
    public float dot(float[] x, int xAt, float[] y, int yAt, int width) {
        FloatVector a = FloatVector.zero(SPECIES);
        FloatVector b = FloatVector.zero(SPECIES);
        FloatVector c = FloatVector.zero(SPECIES);
        FloatVector d = FloatVector.zero(SPECIES);
        int j = 0;
        for (; j + 4 * LENGTH <= width; j += 4 * LENGTH) {
            a = FloatVector.fromArray(SPECIES, x, xAt + j).fma(FloatVector.fromArray(SPECIES, y, yAt + j), a);
            b = FloatVector.fromArray(SPECIES, x, xAt + j + LENGTH)
                    .fma(FloatVector.fromArray(SPECIES, y, yAt + j + LENGTH), b);
            c = FloatVector.fromArray(SPECIES, x, xAt + j + 2 * LENGTH)
                    .fma(FloatVector.fromArray(SPECIES, y, yAt + j + 2 * LENGTH), c);
            d = FloatVector.fromArray(SPECIES, x, xAt + j + 3 * LENGTH)
                    .fma(FloatVector.fromArray(SPECIES, y, yAt + j + 3 * LENGTH), d);
        }
        for (; j < width; j += LENGTH) {
            a = FloatVector.fromArray(SPECIES, x, xAt + j).fma(FloatVector.fromArray(SPECIES, y, yAt + j), a);
        }
        return a.add(b).add(c.add(d)).reduceLanes(VectorOperators.ADD);
    }

    @Override
    public float sum(float[] x, int at, int width) {
        FloatVector a = FloatVector.zero(SPECIES);
        FloatVector b = FloatVector.zero(SPECIES);
        int j = 0;
        for (; j + 2 * LENGTH <= width; j += 2 * LENGTH) {
            a = a.add(FloatVector.fromArray(SPECIES, x, at + j));
            b = b.add(FloatVector.fromArray(SPECIES, x, at + j + LENGTH));
        }
        for (; j < width; j += LENGTH) {
            a = a.add(FloatVector.fromArray(SPECIES, x, at + j));
        }
        return a.add(b).reduceLanes(VectorOperators.ADD);
    }

    @Override
    void adam(float[] parameters, float[] mean, float[] square, float[] gradient, int from, int to, float rate) {
        int whole = from + SPECIES.loopBound(to - from);
        for (int i = from; i < whole; i += LENGTH) {
            FloatVector g = zeroBelow(Adam.MIN_GRADIENT, FloatVector.fromArray(SPECIES, gradient, i));
            // Products and sums are rounded one by one, without fma, as in the plain form.
            FloatVector m = zeroBelow(
                    Adam.MIN_MEAN,
                    FloatVector.fromArray(SPECIES, mean, i).mul(Adam.BETA1).add(g.mul(1 - Adam.BETA1)));
            FloatVector s = zeroBelow(
                    Adam.MIN_MEAN,
                    FloatVector.fromArray(SPECIES, square, i)
                            .mul(Adam.BETA2)
                            .add(g.mul(g).mul(1 - Adam.BETA2)));
            m.intoArray(mean, i);
            s.intoArray(square, i);
            FloatVector step = m.mul(rate).div(s.sqrt().add(Adam.EPSILON));
            FloatVector.fromArray(SPECIES, parameters, i).sub(step).intoArray(parameters, i);
        }
        Adam.update(parameters, mean, square, gradient, whole, to, rate);
    }

    private static FloatVector zeroBelow(float least, FloatVector v) {
        return v.blend(0, v.abs().compare(VectorOperators.LT, least));
    }
}
