package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A product and a sum are rounded once, or always twice. */
class MultiplyAddTest {
    @Test
    void roundedInOneWay() {
        SplittableRandom random = new SplittableRandom(7);
        boolean once = true;
        boolean twice = true;
        int differ = 0;
        for (int trial = 0; trial < 10_000; trial++) {
            float a = (float) random.nextDouble(-2, 2);
            float b = (float) random.nextDouble(-2, 2);
            float c = (float) random.nextDouble(-2, 2);
            float found = MultiplyAdd.of(a, b, c);
            assertEquals((double) a * b + c, found, 4e-7);
            once &= found == Math.fma(a, b, c);
            twice &= found == a * b + c;
            differ += Math.fma(a, b, c) == a * b + c ? 0 : 1;
        }
        assertTrue(differ > 100, "it makes no difference: " + differ);
        assertTrue(once ^ twice, once + " " + twice);
    }
}
