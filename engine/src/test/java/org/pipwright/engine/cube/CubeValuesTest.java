package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Right actions and the costs of wrong ones, from the values of the actions. */
@Tag("fast")
class CubeValuesTest {
    @ParameterizedTest
    @CsvSource({
        // no double, take, pass -> double?, answer, too good?
        "0.5, 0.6, 1, true, TAKE, false",
        "0.5, 0.4, 1, false, TAKE, false",
        "0.8, 1.3, 1, true, PASS, false",
        "1.2, 1.6, 1, false, PASS, true",
        "0.5, 0.5, 1, true, TAKE, false",
        "1.0, 1.0, 1, true, TAKE, false",
        "-0.3, -0.5, 1, false, TAKE, false",
    })
    void theRightActionsFollowFromTheValues(
            double roll, double take, double pass, boolean doubles, CubeAction answer, boolean tooGood) {
        CubeValues values = new CubeValues(true, false, roll, take, pass, take);
        assertEquals(doubles, values.shouldDouble());
        assertEquals(answer, values.answer());
        assertEquals(tooGood, values.tooGood());
        assertFalse(new CubeValues(false, false, roll, take, pass, take).shouldDouble());
    }

    @Test
    void aBeaverIsRightWhenTheTakerIsTheFavourite() {
        CubeValues wrongDouble = new CubeValues(true, true, 0.1, -0.2, 1, -0.4);
        assertEquals(CubeAction.BEAVER, wrongDouble.answer());
        assertEquals(-0.5, wrongDouble.cost(CubeAction.DOUBLE), 1e-12);
        assertEquals(-0.2, wrongDouble.cost(CubeAction.TAKE), 1e-12);
        assertEquals(CubeAction.TAKE, new CubeValues(true, true, 0.1, 0.2, 1, 0.4).answer());
        assertEquals(CubeAction.TAKE, new CubeValues(true, false, 0.1, -0.2, 1, -0.4).answer());
    }

    @Test
    void costsAreNeverPositiveAndSomeActionOfEachSideIsFree() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 10_000; i++) {
            double take = 4 * random.nextDouble() - 2;
            boolean beavers = random.nextBoolean();
            CubeValues values =
                    new CubeValues(random.nextInt(4) > 0, beavers, 4 * random.nextDouble() - 2, take, 1, 2 * take);
            for (CubeAction action : values.choices()) {
                assertTrue(values.cost(action) <= 0);
            }
            if (!values.mayDouble()) {
                assertEquals(0, values.cost(CubeAction.ROLL));
                assertThrows(IllegalArgumentException.class, () -> values.cost(CubeAction.DOUBLE));
                continue;
            }
            assertEquals(0, Math.max(values.cost(CubeAction.ROLL), values.cost(CubeAction.DOUBLE)));
            assertEquals(0, values.cost(values.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL), 1e-10);
            assertEquals(0, values.cost(values.answer()), 1e-10);
            assertEquals(beavers, values.choices().contains(CubeAction.BEAVER));
        }
    }

    /** By hand: rolling 0.5, a take 0.25, a pass 1, a beaver 0.125, which is the opponent's best. */
    @Test
    void whatEachWrongActionCosts() {
        CubeValues values = new CubeValues(true, true, 0.5, 0.25, 1, 0.125);
        assertEquals(-0.375, values.cost(CubeAction.DOUBLE));
        assertEquals(-0.125, values.cost(CubeAction.TAKE));
        assertEquals(-0.875, values.cost(CubeAction.PASS));
        assertEquals(-0.25, new CubeValues(true, false, 0.5, 0.75, 1, 0.75).cost(CubeAction.ROLL));
        assertEquals(-0.25, new CubeValues(true, true, 0.5, 0.25, 1, 0.5).cost(CubeAction.BEAVER));
    }

    @Test
    void doublingIsOptionalWhereItIsWorthWhatRollingIs() {
        assertTrue(new CubeValues(true, false, 0.5, 0.5, 1, 0.5).optional());
        assertTrue(new CubeValues(true, false, 1, 1.5, 1, 1.5).optional());
        assertFalse(new CubeValues(true, false, 0.5, 0.25, 1, 0.25).optional());
        assertFalse(new CubeValues(true, false, 0.5, 0.75, 1, 0.75).optional());
        assertFalse(new CubeValues(false, false, 0.5, 0.5, 1, 0.5).optional());
    }
}
