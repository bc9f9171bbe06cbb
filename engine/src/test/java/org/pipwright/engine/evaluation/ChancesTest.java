package org.pipwright.engine.evaluation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Six chances in an array against the record that holds the same. */
@Tag("fast")
class ChancesTest {
    /** A random distribution behind two other numbers. */
    private static float[] random(SplittableRandom random) {
        float[] chances = new float[9];
        double sum = 0;
        for (int k = 0; k < 6; k++) {
            chances[2 + k] = (float) random.nextDouble();
            sum += chances[2 + k];
        }
        for (int k = 0; k < 6; k++) {
            chances[2 + k] /= (float) sum;
        }
        chances[0] = 5;
        chances[1] = 6;
        chances[8] = 7;
        return chances;
    }

    @Test
    void agreeWithOutcomes() {
        SplittableRandom random = new SplittableRandom(1);
        for (int trial = 0; trial < 1000; trial++) {
            float[] chances = random(random);
            Outcomes outcomes = Outcomes.of(chances, 2);
            assertEquals(outcomes.equity(), Chances.equity(chances, 2), 1e-6);
            float[] swapped = chances.clone();
            Chances.swap(swapped, 2);
            assertEquals(outcomes.swapped(), Outcomes.of(swapped, 2));
            assertEquals(-outcomes.equity(), Chances.equity(swapped, 2), 1e-6);
            assertArrayEquals(new float[] {5, 6, 7}, new float[] {swapped[0], swapped[1], swapped[8]});
            Chances.swap(swapped, 2);
            assertArrayEquals(chances, swapped);
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 2", "2, 3", "3, -1", "4, -2", "5, -3"})
    void certainty(int outcome, float points) {
        float[] chances = new float[6];
        chances[outcome] = 1;
        assertEquals(points, Chances.equity(chances, 0));
    }
}
