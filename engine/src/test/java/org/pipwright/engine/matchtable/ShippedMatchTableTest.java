package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.score.MatchScore;

/** The shipped table against printed ones, and against its own laws. */
class ShippedMatchTableTest {
    private static final MatchTable TABLE = ShippedMatchTable.load();

    private static double percent(int a, int b) {
        return 100 * TABLE.chance(new MatchScore(a, b, (a == 1) != (b == 1)));
    }

    @Test
    void reachesTo25SymmetricAndMonotone() {
        assertEquals(25, TABLE.length());
        for (int a = 1; a <= 25; a++) {
            for (int b = 1; b <= 25; b++) {
                assertEquals(100, percent(a, b) + percent(b, a), 1e-9);
                assertTrue(a == 25 || percent(a, b) > percent(a + 1, b), a + " " + b);
            }
            assertEquals(50, percent(a, a), 1e-9);
        }
    }

    /**
     * A printed table by Kit Woolsey, 1992 (author and year from memory, title and place not noted, so that it may not be
     * found again; printed tables differ by about a point). Row: my points to go; values from my own distance on, at 1-away from 1.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 50 70 75 83 85 90 91 94 95 97",
        "2, 50 60 68 75 81 85 88 91 93",
        "3, 50 59 66 71 76 80 84 87",
        "4, 50 58 64 70 75 79 83",
        "5, 50 57 63 68 73 77",
    })
    void withinTwoPointsOfAPrintedTable(int mine, String row) {
        String[] printed = row.split(" ");
        for (int i = 0; i < printed.length; i++) {
            assertEquals(Integer.parseInt(printed[i]), percent(mine, mine + i), 2.0, mine + " v " + (mine + i));
        }
    }

    /**
     * A formula for a leader who needs two or more, by Rick Janowski (from memory, title and year not noted): 50 + 85 D / (T + 6). The formula printed with it for the
     * Crawford game, 50 + 55 D / (T + 2), lies 3 to 6 points below the printed table above, so it is no check of this one.
     */
    @ParameterizedTest
    @ValueSource(ints = {3, 4, 5, 6, 7, 8, 9})
    void withinAFewPointsOfAPrintedFormula(int trailer) {
        for (int leader = 2; leader < trailer; leader++) {
            int lead = trailer - leader;
            assertEquals(50 + 85.0 * lead / (trailer + 6), percent(leader, trailer), 2.5, leader + " v " + trailer);
        }
    }

    /** A formula by Stephen Turner (from memory, title and year not noted): 50 + (24 / T + 3) D, for leads of a few points. */
    @ParameterizedTest
    @CsvSource({"2, 3", "3, 4", "3, 5", "4, 6", "5, 7", "5, 8", "7, 9", "8, 11"})
    void withinAFewPointsOfTurnersFormula(int leader, int trailer) {
        double formula = 50 + (24.0 / trailer + 3) * (trailer - leader);
        assertEquals(formula, percent(leader, trailer), 2.5);
    }
}
