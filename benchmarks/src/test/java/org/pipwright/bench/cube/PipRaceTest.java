package org.pipwright.bench.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeAction;

/** The exact race doubling table, computed for this project a second time by a separate program. */
class PipRaceTest {
    private static final PipRace RACE = new PipRace(130);

    /** x pips of the side on roll; least leads to double and to redouble with the chances there; first lead to drop. */
    @ParameterizedTest
    @CsvSource({
        "20, -1, 64.9, 0, 68.7, 3, 22.3",
        "30, 1, 67.4, 2, 70.4, 5, 22.0",
        "40, 3, 70.1, 4, 72.5, 7, 21.2",
        "50, 4, 70.3, 5, 72.4, 8, 21.7",
        "60, 5, 70.7, 6, 72.6, 10, 20.4",
        "70, 6, 71.2, 8, 74.7, 11, 20.6",
        "80, 7, 71.7, 9, 74.9, 12, 20.6",
        "90, 8, 72.2, 10, 75.3, 13, 20.6",
        "100, 9, 72.7, 10, 74.2, 14, 20.5",
        "110, 10, 73.2, 11, 74.6, 14, 21.5",
    })
    void leadsToDoubleRedoubleAndDrop(
            int x, int first, double firstWin, int again, double againWin, int drop, double dropWin) {
        int doubles = least(x, lead -> RACE.centred(x, x + lead).shouldDouble());
        int redoubles = least(x, lead -> RACE.owned(x, x + lead).shouldDouble());
        int drops = least(x, lead -> RACE.centred(x, x + lead).answer() == CubeAction.PASS);
        assertEquals(first, doubles);
        assertEquals(firstWin, 100 * RACE.win(x, x + first), 0.06);
        assertEquals(again, redoubles);
        assertEquals(againWin, 100 * RACE.win(x, x + again), 0.06);
        assertEquals(drop, drops);
        assertEquals(dropWin, 100 * (1 - RACE.win(x, x + drop)), 0.06);
    }

    private static int least(int x, java.util.function.IntPredicate test) {
        int lead = 1 - x;
        while (!test.test(lead)) {
            lead++;
        }
        return lead;
    }
}
