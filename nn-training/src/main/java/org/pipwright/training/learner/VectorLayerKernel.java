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
    void forward(int[] index, float[] value, int n, float[] weights, int width, float[] out) {
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
    void inputGradient(int[] index, int n, float[] weights, int width, float[] delta, float[] out) {
        for (int r = 0; r < n; r++) {
            int row = index[r] * width;
            FloatVector sum =
                    FloatVector.fromArray(SPECIES, weights, row).mul(FloatVector.fromArray(SPECIES, delta, 0));
            for (int j = LENGTH; j < width; j += LENGTH) {
                sum = FloatVector.fromArray(SPECIES, weights, row + j)
                        .fma(FloatVector.fromArray(SPECIES, delta, j), sum);
            }
            out[r] = sum.reduceLanes(VectorOperators.ADD);
        }
    }

    @Override
    void addGradient(int[] index, float[] value, int n, float[] delta, int width, float[] gradient) {
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
}
