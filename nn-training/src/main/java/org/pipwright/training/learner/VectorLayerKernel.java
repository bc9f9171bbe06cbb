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

    /** Two sums a row at a time, to hide the latency of multiply-add. */
    @Override
    public void dots(int[] index, int n, float[] weights, int width, float[] delta, float[] out) {
        for (int r = 0; r < n; r++) {
            int row = index[r] * width;
            FloatVector a = FloatVector.zero(SPECIES);
            FloatVector b = FloatVector.zero(SPECIES);
            int j = 0;
            for (; j + 2 * LENGTH <= width; j += 2 * LENGTH) {
                a = FloatVector.fromArray(SPECIES, weights, row + j).fma(FloatVector.fromArray(SPECIES, delta, j), a);
                b = FloatVector.fromArray(SPECIES, weights, row + j + LENGTH)
                        .fma(FloatVector.fromArray(SPECIES, delta, j + LENGTH), b);
            }
            for (; j < width; j += LENGTH) {
                a = FloatVector.fromArray(SPECIES, weights, row + j).fma(FloatVector.fromArray(SPECIES, delta, j), a);
            }
            out[r] = a.add(b).reduceLanes(VectorOperators.ADD);
        }
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
