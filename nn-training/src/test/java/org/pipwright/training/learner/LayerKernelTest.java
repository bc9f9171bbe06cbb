package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.network.VectorForTests;

/** Plain and vector kernels, both built here, against sums in double precision. */
class LayerKernelTest {
    private static final int ROWS = 80;
    private static final int[] LISTED = {0, 1, 2, 3, 13, 45, 80};

    private final SplittableRandom random = new SplittableRandom(8);
    private final LayerKernel[] kernels = {new PlainLayerKernel(), VectorForTests.required(LayerKernel.vectorOrNull())};

    private float[] numbers(int length) {
        float[] numbers = new float[length];
        for (int i = 0; i < length; i++) {
            numbers[i] = (float) (4 * random.nextDouble() - 2);
        }
        return numbers;
    }

    /** Rows in random order, none twice, as lists of inputs are. */
    private int[] rows(int n) {
        int[] rows = new int[ROWS];
        for (int i = 0; i < ROWS; i++) {
            int j = random.nextInt(i + 1);
            rows[i] = rows[j];
            rows[j] = i;
        }
        return Arrays.copyOf(rows, n);
    }

    /** Rounding of a sum of that many products of numbers up to 2, each addition within half a unit. */
    private static double tolerance(int terms) {
        return (terms + 2.0) * (terms + 1) * 4 * Math.pow(2, -24) + 1e-7;
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 32, 48, 64, 80, 112, 128, 144, 256, 272, 512})
    void forward(int width) {
        float[] weights = numbers(ROWS * width);
        for (int n : LISTED) {
            int[] index = rows(n);
            float[] value = numbers(n);
            double[] expected = new double[width];
            for (int r = 0; r < n; r++) {
                for (int j = 0; j < width; j++) {
                    expected[j] += (double) value[r] * weights[index[r] * width + j];
                }
            }
            for (LayerKernel kernel : kernels) {
                float[] out = new float[width + 1];
                Arrays.fill(out, 99);
                kernel.forward(index, value, n, weights, width, out);
                assertClose(expected, out, tolerance(n));
                assertEquals(99, out[width], "behind the row");
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 32, 48, 64, 80, 112, 128, 144, 256, 272, 512})
    void addGradient(int width) {
        float[] delta = numbers(width);
        for (int n : LISTED) {
            int[] index = rows(n);
            float[] value = numbers(n);
            float[] before = numbers(ROWS * width);
            double[] expected = doubles(before);
            for (int r = 0; r < n; r++) {
                for (int j = 0; j < width; j++) {
                    expected[index[r] * width + j] += (double) value[r] * delta[j];
                }
            }
            for (LayerKernel kernel : kernels) {
                float[] gradient = before.clone();
                kernel.addGradient(index, value, n, delta, width, gradient);
                assertClose(expected, gradient, tolerance(2));
            }
        }
    }

    /** Some columns of a row that lies anywhere, from a matrix that lies anywhere. */
    @ParameterizedTest
    @ValueSource(ints = {16, 32, 48, 64, 80, 112, 128, 144, 256, 272, 512})
    void addRows(int width) {
        int at = 7;
        int outAt = 5;
        float[] matrix = numbers(at + ROWS * width);
        for (int n : LISTED) {
            int[] index = rows(n);
            float[] value = numbers(n);
            int from = n / 3;
            int column = width / 32 * 16;
            int columns = width - column;
            float[] before = numbers(outAt + width + 1);
            double[] expected = doubles(before);
            for (int r = from; r < n; r++) {
                for (int j = column; j < width; j++) {
                    expected[outAt + j] += (double) value[r] * matrix[at + index[r] * width + j];
                }
            }
            for (LayerKernel kernel : kernels) {
                float[] out = before.clone();
                kernel.addRows(index, value, from, n, matrix, at, width, column, columns, out, outAt);
                assertClose(expected, out, tolerance(n + 1));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 32, 48, 64, 128, 144, 256})
    void addProducts(int width) {
        int at = 3;
        int first = 2;
        float[] x = numbers(7 * width);
        float[] matrix = numbers(at + width * width);
        float[] before = numbers(7 * width);
        double[] expected = doubles(before);
        for (int i = first; i < first + 4; i++) {
            for (int r = 0; r < width; r++) {
                for (int j = 0; j < width; j++) {
                    expected[i * width + j] += (double) x[i * width + r] * matrix[at + r * width + j];
                }
            }
        }
        for (LayerKernel kernel : kernels) {
            float[] out = before.clone();
            kernel.addProducts(x, first, matrix, at, width, out);
            assertClose(expected, out, tolerance(width + 1));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 32, 48, 64, 80, 112, 128, 144, 256, 272, 512})
    void sumAndDot(int width) {
        float[] a = numbers(3 + width);
        float[] b = numbers(5 + width);
        double sum = 0;
        double dot = 0;
        for (int j = 0; j < width; j++) {
            sum += a[3 + j];
            dot += (double) a[3 + j] * b[5 + j];
        }
        for (LayerKernel kernel : kernels) {
            assertEquals(sum, kernel.sum(a, 3, width), tolerance(width));
            assertEquals(dot, kernel.dot(a, 3, b, 5, width), tolerance(width));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 15, 16, 17, 100, 1024})
    void adam(int length) {
        int from = 3;
        int to = from + length;
        float[] parameters = numbers(to + 3);
        float[] mean = numbers(to + 3);
        float[] square = new float[to + 3];
        for (int i = 0; i < square.length; i++) {
            square[i] = random.nextInt(4) == 0 ? 0 : (float) random.nextDouble();
        }
        float[] gradient = numbers(to + 3);
        for (int i = 0; i < gradient.length; i++) {
            float tiny = (float) Math.pow(10, -12 - random.nextInt(30));
            gradient[i] *= random.nextBoolean() ? 1 : tiny;
            mean[i] *= random.nextBoolean() ? 1 : tiny;
            square[i] *= random.nextBoolean() ? 1 : tiny;
        }
        float[][] expected = {parameters.clone(), mean.clone(), square.clone()};
        Adam.update(expected[0], expected[1], expected[2], gradient, from, to, 0.003f);
        for (LayerKernel kernel : kernels) {
            float[][] found = {parameters.clone(), mean.clone(), square.clone()};
            kernel.adam(found[0], found[1], found[2], gradient, from, to, 0.003f);
            for (int k = 0; k < found.length; k++) {
                assertArrayEquals(expected[k], found[k]);
            }
        }
    }

    /** Else they would stay at the smallest float there is, which is slow to compute with. */
    @Test
    void runningMeansFallToZero() {
        for (LayerKernel kernel : kernels) {
            float[] parameters = numbers(20);
            float[] mean = numbers(20);
            float[] square = new float[20];
            for (int i = 0; i < square.length; i++) {
                square[i] = Math.abs(mean[i]);
            }
            for (int step = 0; step < 100_000; step++) {
                kernel.adam(parameters, mean, square, new float[20], 0, 20, 0.001f);
            }
            assertArrayEquals(new float[20], mean);
            assertArrayEquals(new float[20], square);
        }
    }

    @Test
    void fastestIsVector() {
        assertSame(
                VectorForTests.required(LayerKernel.vectorOrNull()).getClass(),
                LayerKernel.fastest().getClass());
    }

    private static double[] doubles(float[] numbers) {
        double[] doubles = new double[numbers.length];
        Arrays.setAll(doubles, i -> numbers[i]);
        return doubles;
    }

    private static void assertClose(double[] expected, float[] found, double tolerance) {
        for (int j = 0; j < expected.length; j++) {
            assertEquals(expected[j], found[j], tolerance, "sum " + j + " of " + expected.length);
        }
    }
}
