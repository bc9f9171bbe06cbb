package org.pipwright.engine.network;

import java.util.Arrays;
import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorSpecies;

/**
 * A product with up to {@value #MAX} outputs, with the Vector API: a panel of {@link VectorProduct} would be padding for
 * the most part. Each output is summed over lanes of inputs, six outputs at once.
 */
final class VectorDots extends Product {
    static final int MAX = 6;

    private static final VectorSpecies<Float> SPECIES = VectorKernel.SPECIES;

    private static final int LENGTH = SPECIES.length();

    /** Output-major: the weights of output j from {@code j * inputs} on. */
    private final float[] weights;

    private final float[] biases;

    VectorDots(Layer layer) {
        super(layer);
        float[] turned = Matrices.turned(layer.weights(), layer.inputs(), layer.outputs());
        weights = Arrays.copyOf(turned, MAX * inputs);
        biases = Arrays.copyOf(layer.biases(), MAX);
    }

    @Override
    void set(float[] x, int rows, float floor, ProductRoom room, float[] out) {
        float[] lanes = new float[Network.LANES];
        for (int r = 0; r < rows; r++) {
            Arrays.fill(out, r * stride, r * stride + MAX, 0);
            row(x, r * inputs, out, r * stride, lanes);
            for (int j = r * stride; j < r * stride + MAX; j++) {
                out[j] = Math.max(floor, out[j]);
            }
        }
    }

    private void row(float[] x, int xAt, float[] out, int outAt, float[] lanes) {
        float[] w = weights;
        int n = inputs;
        FloatVector a = FloatVector.zero(SPECIES);
        FloatVector b = a;
        FloatVector c = a;
        FloatVector d = a;
        FloatVector e = a;
        FloatVector f = a;
        for (int i = 0; i < n; i += LENGTH) {
            FloatVector v = FloatVector.fromArray(SPECIES, x, xAt + i);
            a = FloatVector.fromArray(SPECIES, w, i).fma(v, a);
            b = FloatVector.fromArray(SPECIES, w, i + n).fma(v, b);
            c = FloatVector.fromArray(SPECIES, w, i + 2 * n).fma(v, c);
            d = FloatVector.fromArray(SPECIES, w, i + 3 * n).fma(v, d);
            e = FloatVector.fromArray(SPECIES, w, i + 4 * n).fma(v, e);
            f = FloatVector.fromArray(SPECIES, w, i + 5 * n).fma(v, f);
        }
        out[outAt] += biases[0] + VectorSum.of(a, lanes);
        out[outAt + 1] += biases[1] + VectorSum.of(b, lanes);
        out[outAt + 2] += biases[2] + VectorSum.of(c, lanes);
        out[outAt + 3] += biases[3] + VectorSum.of(d, lanes);
        out[outAt + 4] += biases[4] + VectorSum.of(e, lanes);
        out[outAt + 5] += biases[5] + VectorSum.of(f, lanes);
    }
}
