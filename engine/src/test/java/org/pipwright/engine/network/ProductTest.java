package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Products with many rows and norms of rows, plain and vector, against sums in double precision. */
class ProductTest {
    private static final float LIMIT = 2f;
    private static final float NO_FLOOR = Float.NEGATIVE_INFINITY;

    private final Kernel[] kernels = {Kernel.plain(), VectorForTests.kernel()};
    private final SplittableRandom random = new SplittableRandom(6);
    private final ProductRoom room = new ProductRoom();

    @ParameterizedTest
    @CsvSource({"32,32", "64,64", "96,96", "32,6", "64,6", "160,160", "256,6"})
    void products(int inputs, int outputs) {
        Layer layer = RandomNetworks.layer(random, inputs, outputs);
        leaveTraces(inputs, (outputs + 31) / 32 * 32);
        for (int rows = 0; rows <= 26; rows++) {
            float[] x = RandomNetworks.floats(random, (rows + 1) * inputs, LIMIT);
            for (Kernel kernel : kernels) {
                Product product = kernel.product(layer);
                assertEquals(outputs == 6 ? 32 : outputs, product.stride);
                float[] before = RandomNetworks.floats(random, (rows + 2) * product.stride, LIMIT);
                for (float floor : new float[] {0, NO_FLOOR}) {
                    float[] out = before.clone();
                    product.set(x, rows, floor, room, out);
                    require(layer, x, rows, product.stride, floor, new float[before.length], before, out);
                }
            }
        }
    }

    /** Has the room used by a layer whose outputs fill the padding of one with fewer. */
    private void leaveTraces(int inputs, int outputs) {
        Product product = kernels[0].product(RandomNetworks.layer(random, inputs, outputs));
        product.set(RandomNetworks.floats(random, 2 * inputs, LIMIT), 2, 0, room, new float[2 * product.stride]);
    }

    /** Widths that take wide panels, narrow ones and both, and one too large for six rows at a time; all, few or none of the inputs active. */
    @ParameterizedTest
    @CsvSource({
        "32,1",
        "64,0.5",
        "96,0.2",
        "128,0.1",
        "128,0.6",
        "160,0.1",
        "160,0.45",
        "224,0",
        "384,0.05",
        "544,0.1",
        "544,0.6"
    })
    void sparseProducts(int width, double share) {
        Layer layer = RandomNetworks.layer(random, width, width);
        for (int rows = 0; rows <= 13; rows++) {
            float[] x = RandomNetworks.floats(random, (rows + 1) * width, LIMIT);
            for (int i = 0; i < x.length; i++) {
                x[i] = random.nextDouble() < share ? Math.abs(x[i]) : 0;
            }
            ActiveInputs active = new ActiveInputs(rows, width);
            for (Kernel kernel : kernels) {
                float[] before = RandomNetworks.floats(random, (rows + 2) * width, LIMIT);
                float[] out = before.clone();
                SparseProduct product = kernel.sparseProduct(layer);
                product.add(x, rows, active, out);
                require(layer, x, rows, width, NO_FLOOR, before, before, out);
                assertEquals(
                        Arrays.toString(rowByRow(product, x, rows, before)), Arrays.toString(out), "the same bits");
            }
        }
    }

    /** What comes out where no row has company. */
    private static float[] rowByRow(SparseProduct product, float[] x, int rows, float[] before) {
        float[] all = before.clone();
        int width = product.inputs;
        for (int r = 0; r < rows; r++) {
            float[] row = Arrays.copyOfRange(x, r * width, (r + 1) * width);
            float[] out = Arrays.copyOfRange(before, r * width, (r + 1) * width);
            product.add(row, 1, new ActiveInputs(1, width), out);
            System.arraycopy(out, 0, all, r * width, width);
        }
        return all;
    }

    @Test
    void activeInputsAreThoseThatAreNotZero() {
        float[] x = {0, 1, 0, 2, 0, 0, 0, 0, Float.MIN_VALUE, 0, 0, 3};
        ActiveInputs active = new ActiveInputs(3, 4);
        for (int trial = 0; trial < 2; trial++) {
            active.clear();
            for (int r = 0; r < 3; r++) {
                active.add(x, 4 * r, 4);
            }
        }
        assertEquals(
                "[0, 2, 2, 4]", Arrays.toString(new int[] {active.from(0), active.to(0), active.to(1), active.to(2)}));
        assertEquals("[1, 3, 0, 3]", Arrays.toString(Arrays.copyOf(active.indices, 4)));
    }

    private static void require(
            Layer layer, float[] x, int rows, int stride, float floor, float[] added, float[] before, float[] out) {
        double tolerance = 1e-7 + layer.inputs() * layer.inputs() * LIMIT * Math.pow(2, -24);
        for (int r = 0; r < rows; r++) {
            double[] row = new double[layer.inputs()];
            for (int i = 0; i < row.length; i++) {
                row[i] = x[r * row.length + i];
            }
            double[] expected = NaiveForward.product(layer, row);
            for (int j = 0; j < layer.outputs(); j++) {
                int at = r * stride + j;
                double sum = Math.max(floor, expected[j] + added[at]);
                assertEquals(sum, out[at], tolerance, "row " + r + " of " + rows + ", output " + j);
            }
        }
        int after = (rows + 1) / 2 * 2 * stride;
        assertEquals(
                Arrays.toString(Arrays.copyOfRange(before, after, before.length)),
                Arrays.toString(Arrays.copyOfRange(out, after, out.length)),
                "what lies behind stays");
    }

    @ParameterizedTest
    @CsvSource({"32,0", "64,5", "96,-300", "1024,1"})
    void norms(int width, float shift) {
        int rows = 9;
        float[] x = RandomNetworks.floats(random, (rows + 1) * width, LIMIT);
        for (int i = 0; i < x.length; i++) {
            x[i] += shift;
        }
        Arrays.fill(x, 2 * width, 3 * width, shift);
        for (Kernel kernel : kernels) {
            float[] out = new float[x.length];
            kernel.normalize(x, rows, width, out);
            for (int r = 0; r < rows; r++) {
                double[] row = new double[width];
                for (int i = 0; i < width; i++) {
                    row[i] = x[r * width + i];
                }
                double[] expected = NaiveForward.norm(row);
                for (int i = 0; i < width; i++) {
                    assertEquals(expected[i], out[r * width + i], 2e-6 + 3e-7 * Math.abs(shift), "row " + r);
                }
            }
            assertEquals(0f, out[rows * width], "what lies behind stays");
        }
    }
}
