package org.pipwright.bench.games;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class RatioTest {
    /** By the definition: deviations of each cluster from what the ratio says of it. */
    @Test
    void errorIsTheTextbooks() {
        double[][] clusters = {{3, 2}, {10, 4}, {1, 1}, {9, 5}};
        Ratio ratio = new Ratio();
        double above = 0;
        double below = 0;
        for (double[] cluster : clusters) {
            ratio.add(cluster[0], cluster[1]);
            above += cluster[0];
            below += cluster[1];
        }
        double squares = 0;
        for (double[] cluster : clusters) {
            squares += Math.pow(cluster[0] - above / below * cluster[1], 2);
        }
        assertEquals(23.0 / 12, ratio.value(), 1e-12);
        assertEquals(Math.sqrt(squares / 3 * 4) / below, ratio.error(), 1e-12);
    }

    /** With equal denominators it is a mean. */
    @Test
    void ofOnesItIsAMean() {
        Ratio ratio = new Ratio();
        for (double value : new double[] {1, 2, 3, 6}) {
            ratio.add(value, 1);
        }
        assertEquals(3, ratio.value());
        assertEquals(Math.sqrt(14.0 / 3 / 4), ratio.error(), 1e-12);
    }
}
