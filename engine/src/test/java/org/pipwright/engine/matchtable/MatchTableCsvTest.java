package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.score.MatchScore;

/** The CSV form: reads what is printed, reads what people write, and says what is wrong with the rest. */
class MatchTableCsvTest {
    private static final String GOOD =
            "# mine\naway,1,2,3\n1,.5,0.69,0.75\n2,0.31,0.5,0.6\n\n3, 0.25, 0.41, 0.5\nafter crawford,0.5,0.48,0.32\n";

    @Test
    void whatIsPrintedIsReadBack() {
        CubeWalk walk = new CubeWalk(20, 2);
        MatchTable table = MatchTableBuilder.build(6, 0.25, 0.01, walk, walk);
        String text = MatchTableCsv.print(table, List.of("one", "two"));
        assertTrue(text.startsWith("# one\n# two\naway,1,2,"));
        MatchTable read = MatchTableCsv.parse(text);
        for (int a = 1; a <= 6; a++) {
            for (int b = 1; b <= 6; b++) {
                assertEquals(table.beforeCrawford(a, b), read.beforeCrawford(a, b), 1e-6);
            }
            assertEquals(table.afterCrawford(a), read.afterCrawford(a), 1e-6);
        }
    }

    @Test
    void roundedTablesAreReconciled() {
        MatchTable table = MatchTableCsv.parse(GOOD);
        assertEquals(0.595, table.chance(new MatchScore(2, 3, false)), 1e-12);
        assertEquals(0.405, table.chance(new MatchScore(3, 2, false)), 1e-12);
        assertEquals(0.32, table.chance(new MatchScore(3, 1, false)), 1e-12);
    }

    /** Each row: what to replace in a good table, by what, and a word of the error line. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "away | points | begins with the row",
                "away,1,2,3 | away,1,2 | rows",
                "away,1,2,3 | away,1,3,2 | count the points",
                "0.69 | 69 | from 0 to 1",
                "0.69 | 0x1 | not a chance",
                "0.69 | '' | not a chance",
                "0.69 | 0.89 | add up",
                "0.31,0.5,0.6 | 0.31,0.5 | needs 3",
                "after crawford | post | belongs there",
                "after crawford,0.5 | after crawford,0.6 | 1-away against 1-away",
            })
    void faultsAreNamedInOneLine(String part, String replacement, String word) {
        String text = GOOD.replace(part, replacement);
        assertFalse(text.equals(GOOD));
        String message = assertThrows(InvalidMatchTableException.class, () -> MatchTableCsv.parse(text))
                .getMessage();
        assertTrue(message.contains(word), message);
        assertEquals(1, message.lines().count());
    }

    @Test
    void nothingAndTooMuchAreRefused() {
        assertThrows(InvalidMatchTableException.class, () -> MatchTableCsv.parse(""));
        String tooLong = "#".repeat(MatchTableCsv.LIMIT + 1);
        assertThrows(InvalidMatchTableException.class, () -> MatchTableCsv.parse(tooLong));
    }
}
