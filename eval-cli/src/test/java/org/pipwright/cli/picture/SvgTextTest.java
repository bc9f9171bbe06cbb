package org.pipwright.cli.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Numbers in pictures. */
@Tag("fast")
class SvgTextTest {
    @Test
    void numbersAreWrittenAsTheSlowWayWritesThem() {
        SplittableRandom random = new SplittableRandom(5);
        for (int k = 0; k < 100_000; k++) {
            double value = random.nextDouble(-3000, 3000);
            double near = Math.rint(value * 1000) / 1000;
            for (double each : new double[] {value, near, Math.nextUp(near), near / 1000, Math.rint(value)}) {
                assertEquals(SvgText.slowly(each), SvgText.number(each), () -> "of " + each);
            }
        }
        for (double each : new double[] {0, -0.0, 0.004, 0.005, -0.005, 1.005, 2.675, 1e9, 1e15, -1e15}) {
            assertEquals(SvgText.slowly(each), SvgText.number(each), () -> "of " + each);
        }
    }
}
