package org.pipwright.training.learner;

/**
 * The loops that learning spends its time in. Every layer has the same form: a list of the inputs that are not 0 (their
 * indices and values, the bias among them as an input that is always 1) and a matrix with one row an input, rows padded
 * with zeros to {@code width}, a multiple of {@link #LANES}. Kernels keep no state.
 */
abstract class LayerKernel {
    /** Widths are multiples of this, so that loops need no tail. */
    static final int LANES = 16;

    /** {@code out[j] = sum over r < n of value[r] * weights[index[r]][j]}. */
    abstract void forward(int[] index, float[] value, int n, float[] weights, int width, float[] out);

    /** {@code gradient[index[r]][j] += value[r] * delta[j]} for r < n. */
    abstract void addGradient(int[] index, float[] value, int n, float[] delta, int width, float[] gradient);

    /**
     * Updates parameters from (inclusive) to (exclusive) as {@link Adam#update} does, to the bit.
     *
     * @param gradient mean gradient over the batch
     * @param rate as {@link Adam#corrected} gives it
     */
    abstract void adam(
            float[] parameters, float[] mean, float[] square, float[] gradient, int from, int to, float rate);

    /** The vector kernel where the JVM offers it, else the plain one. */
    static LayerKernel fastest() {
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
