package org.pipwright.engine.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Six chances: what they sum to, and what is refused. */
@Tag("fast")
class OutcomesTest {
    private static final Outcomes SOME = new Outcomes(0.4, 0.15, 0.01, 0.35, 0.08, 0.01);

    @Test
    void sums() {
        assertEquals(0.56, SOME.win(), 1e-12);
        assertEquals(0.4 + 0.3 + 0.03 - 0.35 - 0.16 - 0.03, SOME.equity(), 1e-12);
    }

    @Test
    void swappingExchangesWinsAndLosses() {
        assertEquals(new Outcomes(0.35, 0.08, 0.01, 0.4, 0.15, 0.01), SOME.swapped());
        assertEquals(SOME, SOME.swapped().swapped());
        assertEquals(-SOME.equity(), SOME.swapped().equity(), 1e-12);
        assertEquals(1 - SOME.win(), SOME.swapped().win(), 1e-12);
    }

    @Test
    void orderOfAnArrayIsThatOfTheComponents() {
        float[] chances = {9, 0.5f, 0.25f, 0.125f, 0.0625f, 0.03125f, 0.03125f};
        assertEquals(new Outcomes(0.5, 0.25, 0.125, 0.0625, 0.03125, 0.03125), Outcomes.of(chances, 1));
        assertEquals(6, Outcomes.COUNT);
    }

    @ParameterizedTest
    @CsvSource({
        "0.5, 0, 0, 0.5, 0, 0.0001",
        "0.5, 0, 0, 0.4999, 0, 0",
        "1.1, 0, 0, -0.1, 0, 0",
        "-0.1, 1.1, 0, 0, 0, 0",
        "1, -0.1, 0.1, 0, 0, 0",
        "1, 0.1, -0.1, 0, 0, 0",
        "1, 0.1, 0, 0, -0.1, 0",
        "1, 0.1, 0, 0, 0, -0.1",
        "0, 0, 0, 0, 0, 0",
        "NaN, 0, 0, 1, 0, 0",
        "1, 0, 0, 0, 0, NaN",
        "Infinity, 0, 0, 0, 0, 0"
    })
    void whatIsNoDistribution(double a, double b, double c, double d, double e, double f) {
        String message = assertThrows(IllegalArgumentException.class, () -> new Outcomes(a, b, c, d, e, f))
                .getMessage();
        assertTrue(message.startsWith("six chances must be at least 0 and sum to 1"), message);
    }

    @Test
    void roundingToFloatIsAllowedFor() {
        assertEquals(1, new Outcomes(1 + 9e-6, 0, 0, 0, 0, 0).win(), 1e-5);
    }
}
