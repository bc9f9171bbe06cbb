package org.pipwright.engine.network;

import java.util.Locale;
import org.pipwright.engine.text.Excerpt;

/**
 * The two loops that inference spends its time in. The plain form is the definition; the vector form gives the same sums
 * in another order of addition. All lengths are multiples of {@link Network#LANES}. Kernels keep no state.
 */
abstract class Kernel {
    /** System property that chooses: {@code auto} (default), {@code plain} or {@code vector}. */
    static final String PROPERTY = "pipwright.kernel";

    private static final Kernel PLAIN = new PlainKernel();

    private static final class Chosen {
        static final Kernel KERNEL = choose(System.getProperty(PROPERTY, "auto"));
    }

    /** What tells it from other kernels that round otherwise, such as {@code plain}. */
    String name() {
        return "plain";
    }

    /**
     * {@code out[j] = max(floor, base[j] + sum over r < n of scales[r] * weights[rows[r]][j])}, where rows of weights are as long
     * as {@code base} and lie one after another.
     */
    abstract void accumulate(
            float[] base, float[] weights, int[] rows, float[] scales, int n, float floor, float[] out);

    /** {@code out[j] = max(floor, biases[j] + sum over i of x[i] * weights[i][j])}, {@code x} padded with zeros. */
    abstract void dense(float[] x, PackedLayer layer, float floor, float[] out);

    /**
     * The same for four rows at once, from the given one on, which lets a kernel read each weight once. Inputs that are not
     * active may be left out.
     */
    void dense4(float[][] x, int first, ActiveOfGroup active, PackedLayer layer, float floor, float[][] out) {
        for (int s = first; s < first + 4; s++) {
            dense(x[s], layer, floor, out[s]);
        }
    }

    /** The largest of the numbers that stand in the same place of so many rows. */
    void largest(float[][] x, int rows, int length, float[] out) {
        System.arraycopy(x[0], 0, out, 0, length);
        for (int r = 1; r < rows; r++) {
            float[] row = x[r];
            for (int i = 0; i < length; i++) {
                out[i] = Math.max(out[i], row[i]);
            }
        }
    }

    /** A layer prepared for products with many positions at once. */
    Product product(Layer layer) {
        return new PlainProduct(layer);
    }

    /** A layer prepared for products with many positions at once, most of whose inputs are zero. */
    SparseProduct sparseProduct(Layer layer) {
        return new PlainSparseProduct(layer);
    }

    /** Rows of {@code width} numbers less their mean, by the root of their variance plus {@link ResidualNetwork#EPSILON}. */
    void normalize(float[] x, int rows, int width, float[] out) {
        for (int from = 0; from < rows * width; from += width) {
            float mean = sum(x, from, width) / width;
            float variance = squares(x, from, width, mean) / width;
            float scale = (float) (1 / Math.sqrt(variance + ResidualNetwork.EPSILON));
            scaled(x, from, width, mean, scale, out);
        }
    }

    private static void scaled(float[] x, int from, int width, float mean, float scale, float[] out) {
        for (int i = from; i < from + width; i++) {
            out[i] = (x[i] - mean) * scale;
        }
    }

    /** Four sums side by side: one alone would wait for each addition to be done before the next begins. */
    private static float sum(float[] x, int from, int width) {
        float sum0 = 0;
        float sum1 = 0;
        float sum2 = 0;
        float sum3 = 0;
        for (int i = from; i < from + width; i += 4) {
            sum0 += x[i];
            sum1 += x[i + 1];
            sum2 += x[i + 2];
            sum3 += x[i + 3];
        }
        return (sum0 + sum1) + (sum2 + sum3);
    }

    private static float squares(float[] x, int from, int width, float mean) {
        float sum0 = 0;
        float sum1 = 0;
        float sum2 = 0;
        float sum3 = 0;
        for (int i = from; i < from + width; i += 4) {
            float off0 = x[i] - mean;
            float off1 = x[i + 1] - mean;
            float off2 = x[i + 2] - mean;
            float off3 = x[i + 3] - mean;
            sum0 += off0 * off0;
            sum1 += off1 * off1;
            sum2 += off2 * off2;
            sum3 += off3 * off3;
        }
        return (sum0 + sum1) + (sum2 + sum3);
    }

    /** The kernel every evaluation uses unless told otherwise: vector where the JVM offers it, else plain. */
    static Kernel chosen() {
        return Chosen.KERNEL;
    }

    static Kernel plain() {
        return PLAIN;
    }

    /** The vector kernel, or null where the module jdk.incubator.vector has not been added to the JVM. */
    static Kernel vectorOrNull() {
        if (ModuleLayer.boot().findModule("jdk.incubator.vector").isEmpty()) {
            return null;
        }
        try {
            return (Kernel) Class.forName("org.pipwright.engine.network.VectorKernel")
                    .getDeclaredConstructor()
                    .newInstance();
        } catch (ReflectiveOperationException | LinkageError e) {
            return null;
        }
    }

    static Kernel choose(String wanted) {
        switch (wanted.toLowerCase(Locale.ROOT)) {
            case "plain":
                return PLAIN;
            case "vector":
                return required(vectorOrNull());
            case "auto":
                Kernel vector = vectorOrNull();
                return vector != null ? vector : PLAIN;
            default:
                throw new IllegalStateException(
                        PROPERTY + " is '" + Excerpt.of(wanted) + "': use auto, plain or vector");
        }
    }

    private static Kernel required(Kernel vector) {
        if (vector == null) {
            throw new IllegalStateException(
                    PROPERTY + "=vector needs the JVM option --add-modules jdk.incubator.vector");
        }
        return vector;
    }
}
