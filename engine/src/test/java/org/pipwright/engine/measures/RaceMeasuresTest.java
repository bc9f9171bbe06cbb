package org.pipwright.engine.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

@Tag("fast")
class RaceMeasuresTest {
    /** The formula worked by hand: 17 * 17 / 209 and 10 * 10 / 202; the chances by Python's {@code math.erf}. */
    @ParameterizedTest
    @CsvSource({"100,113,1.382775,.797154", "100,106,.495050,.690588"})
    void kleinmansFormulaByHand(int roller, int opponent, double measure, double win) {
        assertEquals(measure, Kleinman.measure(roller, opponent), 1e-6);
        assertEquals(win, Kleinman.win(roller, opponent), 1e-6);
    }

    @Test
    void kleinmanGoesBothWays() {
        assertEquals(0.5, Kleinman.win(104, 100), 1e-12);
        assertEquals(1, Kleinman.win(108, 100) + Kleinman.win(100, 100), 1e-2);
        assertTrue(Kleinman.win(120, 100) < 0.25);
        assertEquals(0, Kleinman.win(200, 1), 1e-6);
        assertEquals(1, Kleinman.win(1, 3), 0);
        assertEquals(1, Kleinman.win(1, 1), 0);
    }

    /** Each penalty of the rule by itself, then all of them. */
    @ParameterizedTest
    @CsvSource({
        "1@1 1@4 1@5 1@6, 16",
        "2@1 1@4 1@5 1@6, 19",
        "1@2 1@4 1@5 1@6, 17",
        "3@2 1@4 1@5 1@6, 23",
        "3@3 1@4 1@5 1@6, 24",
        "5@3 1@4 1@5 1@6, 32",
        "1@4 1@6, 11",
        "1@13, 16",
        "3@1 2@2 4@3, 28"
    })
    void keithCount(String side, int count) {
        int[] planes = PositionText.parse("15@bar / " + side).toPlanes();
        assertEquals(count, KeithCount.count(planes, Planes.SIDE));
    }

    /** The roller's count is raised by a seventh, rounded down; thresholds 4, 3 and 2 as printed. */
    @Test
    void keithAdvice() {
        Position position = PositionText.parse("5@6 5@5 3@4 2@3 / 5@6 4@5 3@4 2@3 1@2");
        KeithCount count = KeithCount.of(position);
        assertEquals(73 + 10, count.onRoll());
        assertEquals(70, count.opponent());
        assertFalse(count.doubles());
        assertTrue(count.takes());
        assertTrue(new KeithCount(74, 70).doubles());
        assertFalse(new KeithCount(75, 70).doubles());
        assertFalse(new KeithCount(74, 70).redoubles());
        assertTrue(new KeithCount(73, 70).redoubles());
        assertTrue(new KeithCount(72, 70).takes());
        assertFalse(new KeithCount(71, 70).takes());
    }

    @Test
    void crossovers() {
        int[] start = Position.start().toPlanes();
        assertEquals(new Crossovers(19, 34), Crossovers.of(start, 0));
        int[] planes = PositionText.parse("1@bar 1@24 1@19 1@18 1@7 1@6 / 1@2").toPlanes();
        assertEquals(new Crossovers(4 + 3 + 3 + 2 + 1, 5 + 4 + 4 + 3 + 2 + 1), Crossovers.of(planes, 0));
    }
}
