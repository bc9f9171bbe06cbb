package org.pipwright.training.learner;

/**
 * The loops that learning spends its time in. Every layer has the same form: a list of the inputs that are not 0 (their
 * indices and values, the bias among them as an input that is always 1) and a matrix with one row an input, rows padded
 * with zeros to {@code width}, a multiple of {@link #LANES}. Kernels keep no state.
 */
public abstract class LayerKernel {
    /** Widths are multiples of this, so that loops need no tail. */
    public static final int LANES = 16;

    /** For the two kernels. */
    LayerKernel() {}

    /**
     * The numbers that a layer makes: {@code out[j] = sum over r below n of value[r] * weights[index[r]][j]}.
     *
     * @param index rows of the inputs that are not 0
     * @param value their values
     * @param n how many there are
     * @param weights the matrix, row by row
     * @param width numbers a row
     * @param out gets {@code width} numbers
     */
    public abstract void forward(int[] index, float[] value, int n, float[] weights, int width, float[] out);

    /**
     * Adds to the derivatives by the weights: {@code gradient[index[r]][j] += value[r] * delta[j]} for r below n.
     *
     * @param index rows of the inputs that are not 0
     * @param value their values
     * @param n how many there are
     * @param delta derivatives by the numbers that the layer makes
     * @param width numbers a row
     * @param gradient derivatives by the weights, laid out as they are
     */
    public abstract void addGradient(int[] index, float[] value, int n, float[] delta, int width, float[] gradient);

    /**
     * Adds a weighted sum of rows to some columns of a row: {@code out[outAt + j] += sum over r of value[r] * matrix[at +
     * index[r] * width + j]} for r from {@code from} (inclusive) to {@code to} (exclusive) and j from {@code column} to
     * {@code column + columns}.
     *
     * @param index numbers of rows
     * @param value their weights
     * @param from first place in both lists
     * @param to place behind the last
     * @param matrix holds the matrix, row by row
     * @param at where it begins
     * @param width numbers a row
     * @param column first column
     * @param columns how many, a multiple of {@link #LANES}
     * @param out holds the row that is added to
     * @param outAt where that begins
     */
    public abstract void addRows(
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
            int outAt);

    /**
     * Adds a square matrix times four rows: {@code out[i * width + j] += sum over r below width of x[i * width + r] * matrix[at + r
     * * width + j]} for four i from {@code first} on and all j.
     *
     * @param x rows of {@code width} numbers
     * @param first number of the first of the four
     * @param matrix holds the matrix, row by row
     * @param at where it begins
     * @param width numbers a row
     * @param out rows that are added to
     */
    public abstract void addProducts(float[] x, int first, float[] matrix, int at, int width, float[] out);

    /**
     * The sum of products of two rows.
     *
     * @param a holds the first
     * @param aAt where it begins
     * @param b holds the second
     * @param bAt where that begins
     * @param width numbers a row, a multiple of {@link #LANES}
     * @return the sum
     */
    public abstract float dot(float[] a, int aAt, float[] b, int bAt, int width);

    /**
     * The sum of a row.
     *
     * @param a holds it
     * @param at where it begins
     * @param width its length, a multiple of {@link #LANES}
     * @return the sum
     */
    public abstract float sum(float[] a, int at, int width);

    /**
     * Updates parameters from (inclusive) to (exclusive) as {@link Adam#update} does, to the bit.
     *
     * @param gradient mean gradient over the batch
     * @param rate as {@link Adam#corrected} gives it
     */
    abstract void adam(
            float[] parameters, float[] mean, float[] square, float[] gradient, int from, int to, float rate);

    /**
     * The fastest kernel that this JVM offers.
     *
     * @return the vector kernel where the module jdk.incubator.vector has been added, else the plain one
     */
    public static LayerKernel fastest() {
        LayerKernel vector = vectorOrNull();
        return vector != null ? vector : new PlainLayerKernel();
    }

    /** The vector kernel, or null where the module jdk.incubator.vector has not been added to the JVM. */
    static LayerKernel vectorOrNull() {
        if (ModuleLayer.boot().findModule("jdk.incubator.vector").isEmpty()) {
            return null;
        }
        try {
            return (LayerKernel) Class.forName("org.pipwright.training.learner.VectorLayerKernel")
                    .getDeclaredConstructor()
                    .newInstance();
        } catch (ReflectiveOperationException | LinkageError e) {
            return null;
        }
    }
}
