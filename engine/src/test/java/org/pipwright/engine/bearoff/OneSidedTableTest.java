package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.position.Planes;

class OneSidedTableTest {
    /** A stored mean; the table says 1.5e-7. */
    private static final double STORED = 1e-6;

    static List<List<String>> home() throws IOException {
        return CheckRows.of("onesided-home.tsv");
    }

    @Test
    void homeRowsAreComplete() throws IOException {
        assertEquals(110, home().size());
        assertEquals(75, CheckRows.of("onesided-beyond-home.tsv").size());
    }

    @ParameterizedTest
    @MethodSource("home")
    void homeRows(List<String> row) {
        check(Tables.oneSided(6, 15), row);
    }

    /** The rows with few checkers; {@link LargeTablesTest} has the others. */
    @ParameterizedTest
    @CsvSource({"8,6,5", "9,5,6", "10,6,5", "16,6,15", "24,4,15"})
    void rowsBeyondHome(int points, int checkers, int expected) throws IOException {
        assertEquals(expected, checkRows(points, checkers));
    }

    /** Checks the rows that a table covers and says how many there were. */
    static int checkRows(int points, int checkers) throws IOException {
        int rows = 0;
        for (List<String> row : CheckRows.of("onesided-beyond-home.tsv")) {
            if (Integer.parseInt(row.get(0)) == points && Integer.parseInt(row.get(2)) <= checkers) {
                check(Tables.oneSided(points, checkers), row);
                rows++;
            }
        }
        return rows;
    }

    private static void check(OneSidedTable table, List<String> row) {
        int[] side = CheckRows.side(row.get(1));
        assertTrue(table.index().covers(side, 0));
        int arrangement = table.index().of(side, 0);
        RollSpread spread = table.rolls(arrangement);
        double mean = Double.parseDouble(row.get(4));
        assertEquals(mean, table.mean(arrangement), STORED, row.get(1));
        assertEquals(mean, spread.mean(), STORED, row.get(1));
        assertEquals(Double.parseDouble(row.get(5)), spread.variance(), 20 * STORED, row.get(1));
        double[] chances = Arrays.stream(row.get(6).split(","))
                .mapToDouble(Double::parseDouble)
                .toArray();
        for (int k = 0; k < chances.length; k++) {
            assertEquals(chances[k], spread.exactly(k + 1), STORED, row.get(1) + " in " + (k + 1));
        }
        assertTrue(spread.most() <= chances.length);
    }

    /** Chances in 36ths, counted by an independent program; those of a single checker are common practice, no source. */
    @ParameterizedTest
    @MethodSource("lastRoll")
    void lastRoll(List<String> row) {
        int[] side = new int[Planes.SIDE];
        Planes.add(side, 0, Integer.parseInt(row.get(0)));
        Planes.add(side, 0, Integer.parseInt(row.get(1)));
        OneSidedTable table = Tables.oneSided(6, 15);
        double off = table.rolls(table.index().of(side, 0)).exactly(1);
        assertEquals(Integer.parseInt(row.get(2)) / 36.0, off, STORED);
    }

    static List<List<String>> lastRoll() throws IOException {
        return CheckRows.of("last-roll.tsv");
    }

    @ParameterizedTest
    @CsvSource({"4,34", "5,31", "6,27", "3,36"})
    void lastChecker(int point, int of36) {
        int[] side = new int[Planes.SIDE];
        Planes.add(side, 0, point);
        OneSidedTable table = Tables.oneSided(6, 15);
        assertEquals(of36 / 36.0, table.rolls(table.index().of(side, 0)).exactly(1), STORED);
    }

    /** Means computed for this project by other programs, printed to six digits. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ' ',
            value = {
                "0,0,0,0,0,1 1.25",
                "0,2 1.277778",
                "0,0,2 1.527778",
                "0,1,0,0,1 1.475309",
                "1,0,0,0,0,1 1.586420",
                "0,0,0,2 1.709877",
                "0,0,0,0,2 1.914523",
                "0,0,0,0,0,2 2.109611",
                "0,0,0,1,1,1 2.486423",
                "15 6.979592",
                "0,3,3,3,3,3 8.459640",
                "2,2,2,2,2,2 6.360317",
                "0,0,0,0,0,15 12.266187"
            })
    void printedMeans(String counts, double mean) {
        OneSidedTable table = Tables.oneSided(6, 15);
        assertEquals(mean, table.mean(table.index().of(CheckRows.side(counts), 0)), 1.5e-6);
    }

    @Test
    void everyDistributionIsStoredWithinItsBound() {
        SideIndex index = new SideIndex(6, 15);
        OneSidedBuilder exact = new OneSidedBuilder(index);
        exact.build(1, TableProgress.NONE);
        OneSidedTable table = Tables.oneSided(6, 15);
        double worstMean = 0;
        double worstEntry = 0;
        double[] stored = new double[OneSidedTable.MAX_ROLLS];
        for (int i = 0; i < index.size(); i++) {
            for (int kind = 0; kind < 2; kind++) {
                double[] survival = kind == 0 ? exact.all(i) : exact.first(i);
                int length = kind == 0 ? table.survival(i, stored) : table.survivalToFirst(i, stored);
                double mean = kind == 0 ? table.mean(i) : table.meanToFirst(i);
                worstMean = Math.max(worstMean, Math.abs(Arrays.stream(survival).sum() - mean));
                for (int k = 0; k < survival.length; k++) {
                    double entry = k < length ? stored[k] : 0;
                    worstEntry = Math.max(worstEntry, Math.abs(survival[k] - entry));
                }
            }
        }
        assertTrue(worstMean < 1.5e-7, "mean off by " + worstMean);
        assertTrue(worstEntry < 1.5e-7, "chance off by " + worstEntry);
    }

    @Test
    void threadsMakeNoDifference() {
        SideIndex index = new SideIndex(7, 6);
        OneSidedTable one = OneSidedTable.build(index, 1, TableProgress.NONE);
        OneSidedTable three = OneSidedTable.build(index, 3, TableProgress.NONE);
        assertEquals(one.content(), three.content());
    }
}
