package org.pipwright.training.cuda;

import java.util.SplittableRandom;

/**
 * Shape of a residual network and where its tensors lie in one flat array of weights.
 *
 * <p>In order: first layer {@value #INPUTS} x W, its W biases; for each block a W x W, W biases, b W x W, W biases; last
 * layer W x {@value #OUTPUTS}, {@value #OUTPUTS} biases (six outcomes and two columns that stay unused, since products
 * want multiples of eight). Matrices are input-major. Each tensor begins at a multiple of {@value #ALIGN}.
 *
 * @param width hidden values W, a multiple of 128, at most 1024
 * @param blocks residual blocks, at least 1
 */
record ResidualShape(int width, int blocks) {
    /** Inputs of the feature set places-1. */
    static final int INPUTS = 264;

    /** Columns of the last layer. */
    static final int OUTPUTS = 8;

    /** Outcomes among the columns of the last layer. */
    static final int OUTCOMES = 6;

    private static final int ALIGN = 64;

    ResidualShape {
        if (width < 128 || width > 1024 || width % 128 != 0 || blocks < 1 || blocks > 64) {
            throw new IllegalArgumentException(
                    "a network has a width of 128, 256 and so on to 1024 and 1 to 64 blocks, not " + width + " x "
                            + blocks);
        }
    }

    private static int aligned(int size) {
        return (size + ALIGN - 1) / ALIGN * ALIGN;
    }

    int inputBias() {
        return aligned(INPUTS * width);
    }

    private int firstBlock() {
        return inputBias() + aligned(width);
    }

    private int blockSize() {
        return 2 * (aligned(width * width) + aligned(width));
    }

    /** First matrix of a block. */
    int a(int block) {
        return firstBlock() + block * blockSize();
    }

    int aBias(int block) {
        return a(block) + aligned(width * width);
    }

    /** Second matrix of a block. */
    int b(int block) {
        return aBias(block) + aligned(width);
    }

    int bBias(int block) {
        return b(block) + aligned(width * width);
    }

    int output() {
        return a(blocks);
    }

    int outputBias() {
        return output() + aligned(width * OUTPUTS);
    }

    /** Length of the flat array. */
    int size() {
        return outputBias() + ALIGN;
    }

    /**
     * Random weights to begin with: uniform with the variance 2 / inputs before max(0, x) (He and others, Delving deep into
     * rectifiers, ICCV 2015), 1 / inputs elsewhere; the second matrices of blocks and the last layer a tenth of that, so
     * that a fresh network is nearly the same with any number of blocks.
     */
    float[] initial(SplittableRandom random) {
        float[] weights = new float[size()];
        fill(weights, 0, INPUTS * width, Math.sqrt(3.0 / 40), random);
        for (int k = 0; k < blocks; k++) {
            fill(weights, a(k), width * width, Math.sqrt(6.0 / width), random);
            fill(weights, b(k), width * width, 0.1 * Math.sqrt(3.0 / width), random);
        }
        double limit = 0.1 * Math.sqrt(3.0 / width);
        for (int i = 0; i < width; i++) {
            for (int j = 0; j < OUTCOMES; j++) {
                weights[output() + i * OUTPUTS + j] = (float) ((2 * random.nextDouble() - 1) * limit);
            }
        }
        return weights;
    }

    private static void fill(float[] weights, int at, int length, double limit, SplittableRandom random) {
        for (int i = at; i < at + length; i++) {
            weights[i] = (float) ((2 * random.nextDouble() - 1) * limit);
        }
    }

    /** Whether a text is a shape, such as {@code 1024x6}. */
    static boolean isOne(String text) {
        try {
            parse(text);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** Reads a shape, such as {@code 1024x6}. */
    static ResidualShape parse(String text) {
        String[] parts = text.split("x", -1);
        if (parts.length != 2 || !parts[0].matches("[0-9]{3,4}") || !parts[1].matches("[0-9]{1,2}")) {
            throw new IllegalArgumentException("'" + text + "' is not a shape: write width x blocks, as in 1024x6");
        }
        return new ResidualShape(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
    }

    @Override
    public String toString() {
        return width + "x" + blocks;
    }
}
