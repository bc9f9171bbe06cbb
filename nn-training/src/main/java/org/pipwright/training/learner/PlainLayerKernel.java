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
    public void addRows(
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
            int outAt) {
        for (int r = from; r < to; r++) {
            int row = at + index[r] * width;
            for (int j = column; j < column + columns; j++) {
                out[outAt + j] += value[r] * matrix[row + j];
            }
        }
    }

    @Override
    public void addProducts(float[] x, int first, float[] matrix, int at, int width, float[] out) {
        for (int i = first; i < first + 4; i++) {
            for (int r = 0; r < width; r++) {
                for (int j = 0; j < width; j++) {
                    out[i * width + j] += x[i * width + r] * matrix[at + r * width + j];
                }
            }
        }
    }

    @Override
    public float dot(float[] a, int aAt, float[] b, int bAt, int width) {
        float sum = 0;
        for (int j = 0; j < width; j++) {
            sum += a[aAt + j] * b[bAt + j];
        }
        return sum;
    }

    @Override
    public float sum(float[] a, int at, int width) {
        float sum = 0;
        for (int j = 0; j < width; j++) {
            sum += a[at + j];
        }
        return sum;
    }

    @Override
    void adam(float[] parameters, float[] mean, float[] square, float[] gradient, int from, int to, float rate) {
        Adam.update(parameters, mean, square, gradient, from, to, rate);
    }
}
