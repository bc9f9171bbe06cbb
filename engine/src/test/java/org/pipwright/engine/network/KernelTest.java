package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Plain and vector kernels, both built here, against sums in double precision. */
class KernelTest {
    private static final float NO_FLOOR = Float.NEGATIVE_INFINITY;
    private static final float LIMIT = 2f;

    /** Rows that go through a layer four at a time. */
    private static final int GROUP = 8;

    private final Kernel plain = Kernel.plain();
    private final Kernel vector = VectorForTests.kernel();
    private final SplittableRandom random = new SplittableRandom(5);

    /** Rounding of a sum of that many products of numbers up to LIMIT, each addition within half a unit. */
    private static double tolerance(int terms) {
        return (terms + 2) * terms * LIMIT * LIMIT * Math.pow(2, -24) + 1e-7;
    }

    /** Widths around every unrolled length: one to nine vectors of each species up to 512 bits. */
    @ParameterizedTest
    @ValueSource(ints = {16, 32, 48, 64, 80, 96, 112, 128, 144, 208, 256, 272, 512, 528})
    void accumulate(int width) {
        for (int rows : new int[] {0, 1, 2, 3, 13, 40, 70}) {
            float[] base = RandomNetworks.floats(random, width, LIMIT);
            // More than is used: what lies between and behind must not count.
            float[] weights = RandomNetworks.floats(random, (rows + 3) * width, LIMIT);
            int[] at = random.ints(rows + 2, 0, rows + 3).toArray();
            float[] scales = RandomNetworks.floats(random, rows + 2, LIMIT);
            for (float floor : new float[] {0, NO_FLOOR}) {
                double[] expected = new double[width];
                for (int j = 0; j < width; j++) {
                    double sum = base[j];
                    for (int r = 0; r < rows; r++) {
                        sum += (double) scales[r] * weights[at[r] * width + j];
                    }
                    expected[j] = Math.max(floor, sum);
                }
                for (Kernel kernel : new Kernel[] {plain, vector}) {
                    float[] out = new float[width];
                    Arrays.fill(out, Float.NaN);
                    kernel.accumulate(base, weights, at, scales, rows, floor, out);
                    assertClose(expected, out, tolerance(rows + 1));
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 6, 13, 15, 16, 17, 31, 32, 33, 64, 207, 256})
    void dense(int inputs) {
        for (int outputs : new int[] {1, 6, 13, 16, 17, 32, 207}) {
            Layer layer = new Layer(
                    inputs,
                    outputs,
                    RandomNetworks.floats(random, inputs * outputs, LIMIT),
                    RandomNetworks.floats(random, outputs, LIMIT));
            for (float floor : new float[] {0, NO_FLOOR}) {
                requireDense(layer, floor, 1);
                requireDense(layer, floor, 0.2);
                requireDense(layer, floor, 0);
            }
        }
    }

    /** With so large a share of the inputs above zero, and the others zero. */
    private void requireDense(Layer layer, float floor, double share) {
        PackedLayer packed = new PackedLayer(layer);
        float[][] x = new float[GROUP][];
        double[][] expected = new double[GROUP][];
        for (int s = 0; s < GROUP; s++) {
            x[s] = Arrays.copyOf(RandomNetworks.floats(random, layer.inputs(), LIMIT), Network.padded(layer.inputs()));
            for (int i = 0; i < layer.inputs(); i++) {
                x[s][i] = random.nextDouble() < share ? Math.abs(x[s][i]) : 0;
            }
            expected[s] = naive(layer, x[s], floor, packed.width);
        }
        for (Kernel kernel : new Kernel[] {plain, vector}) {
            float[][] one = new float[GROUP][packed.width];
            float[][] four = new float[GROUP][packed.width];
            for (int s = 0; s < GROUP; s++) {
                Arrays.fill(one[s], Float.NaN);
                Arrays.fill(four[s], Float.NaN);
                kernel.dense(x[s], packed, floor, one[s]);
            }
            // The last row is room for one that nobody asks about.
            ActiveOfGroup active = new ActiveOfGroup(Network.padded(256));
            active.find(x, GROUP - 1, Network.padded(layer.inputs()), kernel);
            for (int s = 0; s < GROUP; s += 4) {
                kernel.dense4(x, s, active, packed, floor, four);
            }
            for (int s = 0; s < GROUP - 1; s++) {
                assertClose(expected[s], one[s], tolerance(layer.inputs() + 1));
                assertArrayEquals(one[s], four[s], "one at a time and four at once give the same bits");
            }
        }
    }

    private static double[] naive(Layer layer, float[] x, float floor, int width) {
        double[] sums = new double[width];
        for (int j = 0; j < width; j++) {
            double sum = 0;
            if (j < layer.outputs()) {
                sum = layer.biases()[j];
                for (int i = 0; i < layer.inputs(); i++) {
                    sum += (double) x[i] * layer.weights()[i * layer.outputs() + j];
                }
            }
            sums[j] = Math.max(floor, sum);
        }
        return sums;
    }

    /** Numbers at the edge of what a float holds: both kernels give the same bits where no rounding comes in. */
    @Test
    void boundaryValues() {
        float[] edges = {
            0f,
            -0f,
            1f,
            -1f,
            Float.MIN_VALUE,
            -Float.MIN_VALUE,
            Float.MIN_NORMAL,
            Float.MAX_VALUE / 2,
            -Float.MAX_VALUE / 2
        };
        for (float edge : edges) {
            float[] base = new float[80];
            Arrays.fill(base, edge);
            float[] weights = Arrays.copyOf(base, 160);
            int[] rows = {1, 0};
            for (float floor : new float[] {0, NO_FLOOR}) {
                float[] byPlain = new float[80];
                float[] byVector = new float[80];
                plain.accumulate(base, weights, rows, new float[] {1, -1}, 1, floor, byPlain);
                vector.accumulate(base, weights, rows, new float[] {1, -1}, 1, floor, byVector);
                for (int j = 0; j < 80; j++) {
                    assertEquals(Math.max(floor, edge + 0f), byPlain[j]);
                    assertEquals(byPlain[j], byVector[j]);
                }
                plain.accumulate(base, weights, rows, new float[] {1, -1}, 2, floor, byPlain);
                vector.accumulate(base, weights, rows, new float[] {1, -1}, 2, floor, byVector);
                for (int j = 0; j < 80; j++) {
                    assertEquals(0f, Math.abs(byPlain[j]), "a number less itself");
                    assertEquals(0f, Math.abs(byVector[j]), "a number less itself");
                }
            }
        }
    }

    private static void assertClose(double[] expected, float[] found, double tolerance) {
        for (int j = 0; j < expected.length; j++) {
            assertEquals(expected[j], found[j], tolerance, "sum " + j + " of " + expected.length);
        }
    }
}
