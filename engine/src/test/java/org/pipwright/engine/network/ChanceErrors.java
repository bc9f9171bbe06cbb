package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;

/** Absolute differences of chances, with the largest that are allowed. */
final class ChanceErrors {
    private final double maxAllowed;
    private final double p99Allowed;
    private double[] errors = new double[1 << 16];
    private int size;

    ChanceErrors(double maxAllowed, double p99Allowed) {
        this.maxAllowed = maxAllowed;
        this.p99Allowed = p99Allowed;
    }

    void add(double[] expected, float[] found, int at) {
        if (size + expected.length > errors.length) {
            errors = Arrays.copyOf(errors, 2 * errors.length);
        }
        for (int k = 0; k < expected.length; k++) {
            errors[size++] = Math.abs(expected[k] - found[at + k]);
        }
    }

    void require(String what) {
        double[] sorted = Arrays.copyOf(errors, size);
        Arrays.sort(sorted);
        double max = sorted[size - 1];
        double p99 = sorted[size * 99 / 100];
        String report = String.format("%s: %d chances, max %.2g, p99 %.2g", what, size, max, p99);
        System.out.println(report);
        assertTrue(max <= maxAllowed && p99 <= p99Allowed, report);
    }
}
