package org.pipwright.engine.network;

import java.util.Arrays;
import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorSpecies;

/**
 * Products with the Vector API. Weights lie in panels of two vectors of outputs, input by input, so that a panel is read
 * from end to end; it stays in the core's cache while all rows go through it, six or eight at a time: twelve sums hide the
 * latency of multiply-add, and six rows use each weight that is read. Each sum goes through the inputs in order, whatever rows
 * come with it.
 */
final class VectorProduct extends Product {
    private static final VectorSpecies<Float> SPECIES = VectorKernel.SPECIES;

    private static final int LENGTH = SPECIES.length();

    private static final int PANEL = 2 * LENGTH;

    private final int panels;
    private final float[] weights;
    private final float[] biases;

    VectorProduct(Layer layer) {
        super(layer);
        panels = (layer.outputs() + PANEL - 1) / PANEL;
        biases = Arrays.copyOf(layer.biases(), stride);
        weights = new float[panels * PANEL * inputs];
        for (int p = 0; p < panels; p++) {
            int length = Math.min(PANEL, layer.outputs() - p * PANEL);
            for (int i = 0; i < inputs; i++) {
                int from = i * layer.outputs() + p * PANEL;
                System.arraycopy(layer.weights(), from, weights, (p * inputs + i) * PANEL, length);
            }
        }
    }

    @Override
    void set(float[] x, int rows, float floor, ProductRoom room, float[] out) {
        for (int p = 0; p < panels; p++) {
            for (int r = 0; r < rows; ) {
                int at = r * stride + p * PANEL;
                r += rows(rows - r, x, r * inputs, p, floor, out, at);
            }
        }
    }

    /**
     * As many rows of a panel as suit best; returns how many. Every even number but 2, 4 and 10 is made of sixes and
     * eights. Eight rows need more than the 16 registers that processors with shorter vectors have.
     */
    private int rows(int left, float[] x, int xAt, int panel, float floor, float[] y, int yAt) {
        int even = left + 1 & ~1;
        if (LENGTH >= 16 && even >= 8 && even % 6 != 0 && even != 10) {
            eight(x, xAt, panel, floor, y, yAt);
            return 8;
        }
        if (even >= 6 && even != 8) {
            six(x, xAt, panel, floor, y, yAt);
            return 6;
        }
        if (even >= 4) {
            four(x, xAt, panel, floor, y, yAt);
            return 4;
        }
        two(x, xAt, panel, floor, y, yAt);
        return 2;
    }

    private void eight(float[] x, int xAt, int panel, float floor, float[] y, int yAt) {
        float[] w = weights;
        int n = inputs;
        int at = panel * n * PANEL;
        FloatVector bias0 = FloatVector.fromArray(SPECIES, biases, panel * PANEL);
        FloatVector bias1 = FloatVector.fromArray(SPECIES, biases, panel * PANEL + LENGTH);
        FloatVector a0 = bias0;
        FloatVector a1 = bias1;
        FloatVector b0 = bias0;
        FloatVector b1 = bias1;
        FloatVector c0 = bias0;
        FloatVector c1 = bias1;
        FloatVector d0 = bias0;
        FloatVector d1 = bias1;
        FloatVector e0 = bias0;
        FloatVector e1 = bias1;
        FloatVector f0 = bias0;
        FloatVector f1 = bias1;
        FloatVector g0 = bias0;
        FloatVector g1 = bias1;
        FloatVector h0 = bias0;
        FloatVector h1 = bias1;
        for (int i = xAt; i < xAt + n; i++) {
            FloatVector w0 = FloatVector.fromArray(SPECIES, w, at);
            FloatVector w1 = FloatVector.fromArray(SPECIES, w, at + LENGTH);
            FloatVector v = FloatVector.broadcast(SPECIES, x[i]);
            a0 = w0.fma(v, a0);
            a1 = w1.fma(v, a1);
            v = FloatVector.broadcast(SPECIES, x[i + n]);
            b0 = w0.fma(v, b0);
            b1 = w1.fma(v, b1);
            v = FloatVector.broadcast(SPECIES, x[i + 2 * n]);
            c0 = w0.fma(v, c0);
            c1 = w1.fma(v, c1);
            v = FloatVector.broadcast(SPECIES, x[i + 3 * n]);
            d0 = w0.fma(v, d0);
            d1 = w1.fma(v, d1);
            v = FloatVector.broadcast(SPECIES, x[i + 4 * n]);
            e0 = w0.fma(v, e0);
            e1 = w1.fma(v, e1);
            v = FloatVector.broadcast(SPECIES, x[i + 5 * n]);
            f0 = w0.fma(v, f0);
            f1 = w1.fma(v, f1);
            v = FloatVector.broadcast(SPECIES, x[i + 6 * n]);
            g0 = w0.fma(v, g0);
            g1 = w1.fma(v, g1);
            v = FloatVector.broadcast(SPECIES, x[i + 7 * n]);
            h0 = w0.fma(v, h0);
            h1 = w1.fma(v, h1);
            at += PANEL;
        }
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        a0.max(least).intoArray(y, yAt);
        a1.max(least).intoArray(y, yAt + LENGTH);
        b0.max(least).intoArray(y, yAt + stride);
        b1.max(least).intoArray(y, yAt + stride + LENGTH);
        c0.max(least).intoArray(y, yAt + 2 * stride);
        c1.max(least).intoArray(y, yAt + 2 * stride + LENGTH);
        d0.max(least).intoArray(y, yAt + 3 * stride);
        d1.max(least).intoArray(y, yAt + 3 * stride + LENGTH);
        e0.max(least).intoArray(y, yAt + 4 * stride);
        e1.max(least).intoArray(y, yAt + 4 * stride + LENGTH);
        f0.max(least).intoArray(y, yAt + 5 * stride);
        f1.max(least).intoArray(y, yAt + 5 * stride + LENGTH);
        g0.max(least).intoArray(y, yAt + 6 * stride);
        g1.max(least).intoArray(y, yAt + 6 * stride + LENGTH);
        h0.max(least).intoArray(y, yAt + 7 * stride);
        h1.max(least).intoArray(y, yAt + 7 * stride + LENGTH);
    }

    private void six(float[] x, int xAt, int panel, float floor, float[] y, int yAt) {
        float[] w = weights;
        int n = inputs;
        int at = panel * n * PANEL;
        FloatVector bias0 = FloatVector.fromArray(SPECIES, biases, panel * PANEL);
        FloatVector bias1 = FloatVector.fromArray(SPECIES, biases, panel * PANEL + LENGTH);
        FloatVector a0 = bias0;
        FloatVector a1 = bias1;
        FloatVector b0 = bias0;
        FloatVector b1 = bias1;
        FloatVector c0 = bias0;
        FloatVector c1 = bias1;
        FloatVector d0 = bias0;
        FloatVector d1 = bias1;
        FloatVector e0 = bias0;
        FloatVector e1 = bias1;
        FloatVector f0 = bias0;
        FloatVector f1 = bias1;
        for (int i = xAt; i < xAt + n; i++) {
            FloatVector w0 = FloatVector.fromArray(SPECIES, w, at);
            FloatVector w1 = FloatVector.fromArray(SPECIES, w, at + LENGTH);
            FloatVector v = FloatVector.broadcast(SPECIES, x[i]);
            a0 = w0.fma(v, a0);
            a1 = w1.fma(v, a1);
            v = FloatVector.broadcast(SPECIES, x[i + n]);
            b0 = w0.fma(v, b0);
            b1 = w1.fma(v, b1);
            v = FloatVector.broadcast(SPECIES, x[i + 2 * n]);
            c0 = w0.fma(v, c0);
            c1 = w1.fma(v, c1);
            v = FloatVector.broadcast(SPECIES, x[i + 3 * n]);
            d0 = w0.fma(v, d0);
            d1 = w1.fma(v, d1);
            v = FloatVector.broadcast(SPECIES, x[i + 4 * n]);
            e0 = w0.fma(v, e0);
            e1 = w1.fma(v, e1);
            v = FloatVector.broadcast(SPECIES, x[i + 5 * n]);
            f0 = w0.fma(v, f0);
            f1 = w1.fma(v, f1);
            at += PANEL;
        }
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        a0.max(least).intoArray(y, yAt);
        a1.max(least).intoArray(y, yAt + LENGTH);
        b0.max(least).intoArray(y, yAt + stride);
        b1.max(least).intoArray(y, yAt + stride + LENGTH);
        c0.max(least).intoArray(y, yAt + 2 * stride);
        c1.max(least).intoArray(y, yAt + 2 * stride + LENGTH);
        d0.max(least).intoArray(y, yAt + 3 * stride);
        d1.max(least).intoArray(y, yAt + 3 * stride + LENGTH);
        e0.max(least).intoArray(y, yAt + 4 * stride);
        e1.max(least).intoArray(y, yAt + 4 * stride + LENGTH);
        f0.max(least).intoArray(y, yAt + 5 * stride);
        f1.max(least).intoArray(y, yAt + 5 * stride + LENGTH);
    }

    private void four(float[] x, int xAt, int panel, float floor, float[] y, int yAt) {
        float[] w = weights;
        int n = inputs;
        int at = panel * n * PANEL;
        FloatVector bias0 = FloatVector.fromArray(SPECIES, biases, panel * PANEL);
        FloatVector bias1 = FloatVector.fromArray(SPECIES, biases, panel * PANEL + LENGTH);
        FloatVector a0 = bias0;
        FloatVector a1 = bias1;
        FloatVector b0 = bias0;
        FloatVector b1 = bias1;
        FloatVector c0 = bias0;
        FloatVector c1 = bias1;
        FloatVector d0 = bias0;
        FloatVector d1 = bias1;
        for (int i = xAt; i < xAt + n; i++) {
            FloatVector w0 = FloatVector.fromArray(SPECIES, w, at);
            FloatVector w1 = FloatVector.fromArray(SPECIES, w, at + LENGTH);
            FloatVector v = FloatVector.broadcast(SPECIES, x[i]);
            a0 = w0.fma(v, a0);
            a1 = w1.fma(v, a1);
            v = FloatVector.broadcast(SPECIES, x[i + n]);
            b0 = w0.fma(v, b0);
            b1 = w1.fma(v, b1);
            v = FloatVector.broadcast(SPECIES, x[i + 2 * n]);
            c0 = w0.fma(v, c0);
            c1 = w1.fma(v, c1);
            v = FloatVector.broadcast(SPECIES, x[i + 3 * n]);
            d0 = w0.fma(v, d0);
            d1 = w1.fma(v, d1);
            at += PANEL;
        }
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        a0.max(least).intoArray(y, yAt);
        a1.max(least).intoArray(y, yAt + LENGTH);
        b0.max(least).intoArray(y, yAt + stride);
        b1.max(least).intoArray(y, yAt + stride + LENGTH);
        c0.max(least).intoArray(y, yAt + 2 * stride);
        c1.max(least).intoArray(y, yAt + 2 * stride + LENGTH);
        d0.max(least).intoArray(y, yAt + 3 * stride);
        d1.max(least).intoArray(y, yAt + 3 * stride + LENGTH);
    }

    private void two(float[] x, int xAt, int panel, float floor, float[] y, int yAt) {
        float[] w = weights;
        int n = inputs;
        int at = panel * n * PANEL;
        FloatVector bias0 = FloatVector.fromArray(SPECIES, biases, panel * PANEL);
        FloatVector bias1 = FloatVector.fromArray(SPECIES, biases, panel * PANEL + LENGTH);
        FloatVector a0 = bias0;
        FloatVector a1 = bias1;
        FloatVector b0 = bias0;
        FloatVector b1 = bias1;
        for (int i = xAt; i < xAt + n; i++) {
            FloatVector w0 = FloatVector.fromArray(SPECIES, w, at);
            FloatVector w1 = FloatVector.fromArray(SPECIES, w, at + LENGTH);
            FloatVector v = FloatVector.broadcast(SPECIES, x[i]);
            a0 = w0.fma(v, a0);
            a1 = w1.fma(v, a1);
            v = FloatVector.broadcast(SPECIES, x[i + n]);
            b0 = w0.fma(v, b0);
            b1 = w1.fma(v, b1);
            at += PANEL;
        }
        FloatVector least = FloatVector.broadcast(SPECIES, floor);
        a0.max(least).intoArray(y, yAt);
        a1.max(least).intoArray(y, yAt + LENGTH);
        b0.max(least).intoArray(y, yAt + stride);
        b1.max(least).intoArray(y, yAt + stride + LENGTH);
    }
}
