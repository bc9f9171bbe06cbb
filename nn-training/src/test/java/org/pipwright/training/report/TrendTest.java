package org.pipwright.training.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Whether a curve still rises. */
class TrendTest {
    private static final int RUNS = 2000;

    /** Twelve evaluations, each after twice as many games; the later half gains so much each time. */
    private static List<Trend.Stand> stands(double gain, double error, Random chance) {
        return IntStream.range(0, 12)
                .mapToObj(i -> new Trend.Stand(
                        1000 << i, -1 + (i < 6 ? 0.2 * i : 1 + gain * (i - 6)) + error * chance.nextGaussian(), error))
                .toList();
    }

    /** Through points on a line goes that line; least squares with equal weights give its error by hand. */
    @Test
    void theLineIsThatOfTheLaterHalf() {
        List<Trend.Stand> straight = IntStream.range(0, 12)
                .mapToObj(i -> new Trend.Stand(1000 << i, i < 6 ? 5 : 0.03 * i, 0.02))
                .toList();
        Trend trend = Trend.of(straight);
        assertEquals(6, trend.evaluations());
        assertEquals(0.03, trend.slope(), 1e-9);
        // The squared distances of 0 to 5 from their mean add up to 17.5.
        assertEquals(0.02 / Math.sqrt(17.5), trend.error(), 1e-9);
    }

    /** A flat curve is called rising as often as the test says, a rising one nearly always. */
    @Test
    void theTestErrsAsOftenAsItSays() {
        Random chance = new Random(4);
        int wrong = 0;
        int right = 0;
        for (int i = 0; i < RUNS; i++) {
            wrong += Trend.of(stands(0, 0.02, chance)).rising() ? 1 : 0;
            right += Trend.of(stands(0.02, 0.02, chance)).rising() ? 1 : 0;
        }
        assertEquals(0.05, wrong / (double) RUNS, 0.015);
        assertTrue(right > 0.98 * RUNS, right + " of " + RUNS);
    }

    @Test
    void tooFewSayNothing() {
        Trend trend = Trend.of(stands(0.1, 0.02, new Random(1)).subList(0, 5));
        assertFalse(trend.known() || trend.rising());
        assertTrue(trend.sentence("games").contains("from 6 evaluations on"));
        List<Trend.Stand> untrained = List.of(new Trend.Stand(0, 1, 0.1), new Trend.Stand(9, Double.NaN, Double.NaN));
        assertFalse(Trend.of(untrained).known());
    }

    @Test
    void theSentenceSaysWhichTest() {
        Trend flat = new Trend(6, 0.001, 0.002);
        assertEquals(
                "Over the last 6 evaluations it gains +0.001 ± 0.002 points with each doubling of the games: by a one-sided"
                        + " test at 5 %, no more than chance gives, so the curve is flat as far as can be told.",
                flat.sentence("games"));
        assertTrue(new Trend(6, 0.01, 0.002)
                .sentence("targets")
                .endsWith("targets: by a one-sided test at 5 %, it still rises."));
    }
}
