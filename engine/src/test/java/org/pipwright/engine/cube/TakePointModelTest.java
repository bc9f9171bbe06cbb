package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The general take-point model: its printed form, its limits, and the identities that define its points. */
@Tag("fast")
class TakePointModelTest {
    /** The take point is the form printed in Janowski 1993; the other columns follow from the definitions. */
    @ParameterizedTest
    @CsvSource({
        "0, 1, 1, .2500, .7500, .5000, .5000",
        "0.6666666667, 1, 1, .2143, .7857, .6786, .7143",
        ".68, 1, 1, .2137, .7863, .6827, .7179",
        "1, 1, 1, .2000, .8000, .8000, .8000",
        "0.6666666667, 1.25, 1.25, .2647, .7353, .6471, .6765",
        "0.6666666667, 1.5, 1.2, .2308, .6703, .5879, .6154",
    })
    void pointsOfTheModel(double x, double w, double l, double take, double cash, double first, double again) {
        TakePointModel model = new TakePointModel(w, l, x);
        assertEquals(take, model.takePoint(), 5e-5);
        assertEquals((2 * l - 1) / (2 * w + 2 * l + x), model.takePoint(), 1e-12);
        assertEquals(cash, model.cashPoint(), 5e-5);
        assertEquals(first, model.initialDoublePoint(), 5e-5);
        assertEquals(again, model.redoublePoint(), 5e-5);
    }

    @Test
    void eachPointIsWhereTwoActionsAreEqual() {
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 1000; i++) {
            double w = 1 + random.nextDouble();
            double l = 1 + random.nextDouble();
            double x = random.nextDouble();
            TakePointModel model = new TakePointModel(w, l, x);
            // Taking gives the taker the cube at twice the stakes, passing costs 1.
            assertEquals(-1, 2 * model.owned(model.takePoint()), 1e-9);
            assertEquals(1, 2 * model.opponentOwns(model.cashPoint()), 1e-9);
            // Both sides agree about the point from which a double is passed.
            assertEquals(1 - new TakePointModel(l, w, x).takePoint(), model.cashPoint(), 1e-9);
            assertEquals(2 * model.opponentOwns(model.redoublePoint()), model.owned(model.redoublePoint()), 1e-9);
            double first = model.initialDoublePoint();
            assertEquals(2 * model.opponentOwns(first), model.centredGeneral(first), 1e-9);
            // One side's equity is the other's loss.
            double p = random.nextDouble();
            TakePointModel other = new TakePointModel(l, w, x);
            assertEquals(-other.owned(1 - p), model.opponentOwns(p), 1e-9);
            assertEquals(-other.centredGeneral(1 - p), model.centredGeneral(p), 1e-9);
            assertEquals(-other.centredBlend(1 - p), model.centredBlend(p), 1e-9);
        }
    }

    /** Worked example of the two forms of the centred cube, and where they meet. */
    @Test
    void theBlendAndTheGeneralFormDifferBetweenTheLimits() {
        TakePointModel model = new TakePointModel(1, 1, 2.0 / 3);
        assertEquals(0.2800, model.centredGeneral(0.6), 5e-5);
        assertEquals(0.2889, model.centredBlend(0.6), 5e-5);
        for (double x : new double[] {0, 1}) {
            TakePointModel limit = new TakePointModel(1.3, 1.2, x);
            assertEquals(limit.centredGeneral(0.57), limit.centredBlend(0.57), 1e-12);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.5, 1, 0", "1, 3.5, 0", "1, 1, -0.1", "1, 1, 1.1", "NaN, 1, 0"})
    void argumentsOutOfRangeAreRefused(double w, double l, double x) {
        assertThrows(IllegalArgumentException.class, () -> new TakePointModel(w, l, x));
    }

    @Test
    void moreGammonsForTheDoublerMeanMoreIsNeededToTake() {
        for (double x = 0; x <= 1; x += 0.25) {
            for (double l = 1; l < 1.9; l += 0.1) {
                double fewer = new TakePointModel(1.2, l, x).takePoint();
                double more = new TakePointModel(1.2, l + 0.1, x).takePoint();
                assertTrue(more > fewer);
            }
        }
    }
}
