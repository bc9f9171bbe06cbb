package org.pipwright.engine.statistics;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RepeatedLooksTest {
    /** Runs without any drift: how many are ever taken for one at a look after every round, up to 360 looks. */
    private static int crossings(double fixed, RepeatedLooks looks, int runs) {
        Random random = new Random(17);
        int crossed = 0;
        for (int run = 0; run < runs; run++) {
            double sum = 0;
            for (int trials = 36; trials <= 360 * 36; trials += 36) {
                sum += 6 * random.nextGaussian();
                double needed = looks == null ? fixed : looks.needed(trials);
                if (Math.abs(sum) > needed * Math.sqrt(trials)) {
                    crossed++;
                    break;
                }
            }
        }
        return crossed;
    }

    @Test
    void chanceCrossesTheBoundaryNoMoreOftenThanPromisedHoweverOftenOneLooks() {
        int runs = 4000;
        double alpha = Normal.beyond(2);
        int crossed = crossings(0, new RepeatedLooks(2, 1), runs);
        double margin = 3 * Math.sqrt(runs * alpha * (1 - alpha));
        assertTrue(crossed < runs * alpha + margin, crossed + " of " + runs + " crossed, promised " + alpha);
        assertTrue(crossed > runs * alpha / 10, "a boundary that is hardly ever crossed is too cautious: " + crossed);
        int naive = crossings(2, null, runs);
        assertTrue(naive > 4 * alpha * runs, "a fixed number of standard errors is crossed too often: " + naive);
    }

    @Test
    void moreRivalsAndMoreCertaintyNeedMore() {
        double one = new RepeatedLooks(3, 1).needed(1000);
        assertTrue(one > 3 && one < 4.5, "at 1000 trials: " + one);
        assertTrue(new RepeatedLooks(3, 5).needed(1000) > one);
        assertTrue(new RepeatedLooks(3.5, 1).needed(1000) > one);
        assertTrue(new RepeatedLooks(3, 1).needed(36) > one);
        assertThrows(IllegalArgumentException.class, () -> new RepeatedLooks(0, 1));
        assertThrows(IllegalArgumentException.class, () -> new RepeatedLooks(3, 0));
    }
}
