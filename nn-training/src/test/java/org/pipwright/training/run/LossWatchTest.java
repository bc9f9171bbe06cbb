package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.network.InvalidModelException;

/** What counts as divergence, and what does not. */
class LossWatchTest {
    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void noNumberIsDivergenceAtOnce(double loss) {
        assertThrows(InvalidModelException.class, () -> new LossWatch().add(loss, 1));
    }

    @Test
    void fallingLossIsFine() {
        LossWatch watch = new LossWatch();
        for (int round = 0; round < 200; round++) {
            watch.add(1.79 * Math.exp(-round / 20.0) + 0.6, 512);
        }
    }

    @Test
    void worseThanKnowingNothing() {
        LossWatch watch = new LossWatch();
        watch.add(2.5, 512);
        Exception e = assertThrows(InvalidModelException.class, () -> watch.add(3.75, 512));
        assertEquals("the loss has risen to 3.75", e.getMessage());
    }

    @Test
    void aRiseCountsOnceSettled() {
        LossWatch watch = new LossWatch();
        for (int round = 0; round < 40; round++) {
            watch.add(round % 2 == 0 ? 0.8 : 1.6, 256);
        }
        assertThrows(InvalidModelException.class, () -> watch.add(2.2, 256));
    }

    /** Single games scatter up to losses that a mean over many would never reach. */
    @Test
    void fewGamesAreNotJudgedAlone() {
        SplittableRandom random = new SplittableRandom(3);
        LossWatch watch = new LossWatch();
        for (int game = 0; game < 100_000; game++) {
            watch.add(random.nextInt(20) == 0 ? 6 : 0.5, 1);
        }
        assertThrows(InvalidModelException.class, () -> {
            for (int game = 0; game < 512; game++) {
                watch.add(6, 1);
            }
        });
    }
}
