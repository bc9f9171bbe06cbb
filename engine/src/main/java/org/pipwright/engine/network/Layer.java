package org.pipwright.engine.network;

/**
 * The weights of one fully connected layer, input-major: {@code weights[i * outputs + j]} leads from input i to output j.
 *
 * @param inputs number of inputs, at least 1
 * @param outputs number of outputs, at least 1
 * @param weights inputs * outputs finite numbers; not to be changed by anyone once handed over
 * @param biases one finite number an output; likewise
 */
public record Layer(int inputs, int outputs, float[] weights, float[] biases) {
    /** The bits of a float's exponent; those of infinity and of what is no number are all set. */
    private static final int EXPONENT = 0x7F80_0000;

    /** The lowest of them, which makes the largest exponent overflow into the sign. */
    private static final int ONE_MORE = 0x0080_0000;

    /**
     * Checks the shape and the numbers.
     *
     * @param inputs number of inputs
     * @param outputs number of outputs
     * @param weights inputs * outputs numbers
     * @param biases outputs numbers
     * @throws InvalidModelException if lengths do not fit or a number is not finite
     */
    public Layer {
        if (inputs < 1 || outputs < 1 || weights.length != inputs * outputs || biases.length != outputs) {
            throw new InvalidModelException("a layer of " + inputs + " inputs and " + outputs + " outputs has "
                    + weights.length + " weights and " + biases.length + " biases");
        }
        requireFinite(weights);
        requireFinite(biases);
    }

    private static void requireFinite(float[] numbers) {
        // Below zero if one has the largest exponent: asked one by one they would take a fifth of the time a large
        // model is read in.
        int all = 0;
        for (float number : numbers) {
            all |= (Float.floatToRawIntBits(number) & EXPONENT) + ONE_MORE;
        }
        if (all >= 0) {
            return;
        }
        for (float number : numbers) {
            if (!Float.isFinite(number)) {
                throw new InvalidModelException(
                        "a weight is " + number + ": the model is damaged or its training diverged");
            }
        }
    }

    /**
     * How many numbers the layer has.
     *
     * @return weights and biases
     */
    public int size() {
        return weights.length + biases.length;
    }
}
