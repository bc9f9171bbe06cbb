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
        // Zero as long as all are finite: one by one they would take a fifth of the time a large model is read in.
        float zero = 0;
        for (float number : numbers) {
            zero += 0 * number;
        }
        if (zero == 0) {
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
