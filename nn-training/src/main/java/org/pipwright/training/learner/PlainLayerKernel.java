package org.pipwright.training.learner;

import java.util.Arrays;

/** The kernel in plain Java: the definition of what the vector kernel computes. */
final class PlainLayerKernel extends LayerKernel {
    @Override
    public void forward(int[] index, float[] value, int n, float[] weights, int width, float[] out) {
        Arrays.fill(out, 0, width, 0);
        for (int r = 0; r < n; r++) {
            int row = index[r] * width;
            for (int j = 0; j < width; j++) {
                out[j] += value[r] * weights[row + j];
            }
        }
    }

    @Override
    public void addGradient(int[] index, float[] value, int n, float[] delta, int width, float[] gradient) {
        for (int r = 0; r < n; r++) {
            int row = index[r] * width;
            for (int j = 0; j < width; j++) {
                gradient[row + j] += value[r] * delta[j];
            }
        }
    }

    @Override
    public void dots(int[] index, int n, float[] weights, int width, float[] delta, float[] out) {
        for (int r = 0; r < n; r++) {
            int row = index[r] * width;
            float sum = 0;
            for (int j = 0; j < width; j++) {
                sum += weights[row + j] * delta[j];
            }
            out[r] = sum;
        }
    }

    @Override
    void adam(float[] parameters, float[] mean, float[] square, float[] gradient, int from, int to, float rate) {
        Adam.update(parameters, mean, square, gradient, from, to, rate);
    }
}
