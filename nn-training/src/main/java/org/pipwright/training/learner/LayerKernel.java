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
     * The derivatives by some inputs: {@code out[r] = sum over j of weights[index[r]][j] * delta[j]} for r below n.
     *
     * @param index rows of those inputs
     * @param n how many there are
     * @param weights the matrix, row by row
     * @param width numbers a row
     * @param delta derivatives by the numbers that the layer makes
     * @param out gets n numbers
     */
    public abstract void dots(int[] index, int n, float[] weights, int width, float[] delta, float[] out);

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
