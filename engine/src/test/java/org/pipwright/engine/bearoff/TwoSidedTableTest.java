package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.position.PositionText;

class TwoSidedTableTest {
    private static final double EXACT = 1e-8;

    private final TwoSidedTable table = Tables.twoSided();

    private int side(String counts) {
        return table.index().of(CheckRows.side(counts), 0);
    }

    static List<List<String>> cubeless() throws IOException {
        return CheckRows.of("twosided-cubeless.tsv");
    }

    @ParameterizedTest
    @MethodSource("cubeless")
    void cubelessRows(List<String> row) {
        TwoSidedValue value = table.value(side(row.get(0)), side(row.get(1)));
        assertEquals(Double.parseDouble(row.get(2)), value.win(), EXACT);
    }

    static List<List<String>> cube() throws IOException {
        return CheckRows.of("twosided-cube.tsv");
    }

    @ParameterizedTest
    @MethodSource("cube")
    void cubeRows(List<String> row) {
        TwoSidedValue value = table.value(side(row.get(0)), side(row.get(1)));
        DoublingValue doubling = table.doubling(side(row.get(0)), side(row.get(1)));
        double[] found = {
            value.win(),
            value.centred(),
            value.mine(),
            value.theirs(),
            doubling.noDoubleCentred(),
            doubling.noDoubleMine(),
            doubling.doubleTake()
        };
        for (int i = 0; i < found.length; i++) {
            assertEquals(Double.parseDouble(row.get(2 + i)), found[i], EXACT, "column " + (2 + i));
        }
        assertEquals(row.get(9), action(doubling.noDoubleCentred(), doubling.doubleTake()));
        assertEquals(row.get(10), action(doubling.noDoubleMine(), doubling.doubleTake()));
    }

    /** The words of the check rows; they call equities equal within 1e-11, the table's error allows less. */
    private static String action(double noDouble, double doubleTake) {
        double gain = Math.min(doubleTake, 1) - noDouble;
        String first = Math.abs(gain) < EXACT ? "optional" : gain > 0 ? "double" : "no_double";
        String second = Math.abs(doubleTake - 1) < EXACT ? "optional" : doubleTake > 1 ? "pass" : "take";
        return first + "/" + second;
    }

    static List<List<String>> paradoxes() throws IOException {
        return CheckRows.of("better-position-no-redouble.tsv");
    }

    /** The stronger opponent is redoubled, the weaker one is not. */
    @ParameterizedTest
    @MethodSource("paradoxes")
    void betterPositionNoRedouble(List<String> row) {
        int me = side(row.get(0));
        for (int i = 0; i < 2; i++) {
            int opponent = side(row.get(1 + 4 * i));
            DoublingValue doubling = table.doubling(me, opponent);
            assertEquals(
                    Double.parseDouble(row.get(2 + 4 * i)),
                    table.value(me, opponent).win(),
                    EXACT);
            assertEquals(Double.parseDouble(row.get(3 + 4 * i)), doubling.noDoubleMine(), EXACT);
            assertEquals(Double.parseDouble(row.get(4 + 4 * i)), doubling.doubleTake(), EXACT);
            assertEquals(i == 0, doubling.doubleTake() > doubling.noDoubleMine());
        }
    }

    /** Values computed for this project by other programs, printed to six digits; 6 against 6 is the smallest take. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ' ',
            value = {
                "0,0,0,0,0,1 0,0,0,0,0,1 .812500 1 1 .5",
                "0,1,0,0,0,1 0,1,0,0,0,1 .761555 1 1 .522805",
                "0,0,0,2 0,0,0,2 .777330 1 1 .554184",
                "0,0,0,0,2 0,0,0,0,2 .800146 1 1 .594193",
                "0,0,0,0,0,2 0,0,0,0,0,2 .754494 .961259 .961259 .480630",
                "0,1,0,0,1 2 .527778 .111111 .111111 .055556",
                "0,0,3 0,0,3 .810233 1 1 .606074",
                "0,0,0,1,1,1 0,0,0,1,1,1 .707303 .753379 .753379 .376689",
                "0,0,0,1,1,1 1,1,1 .436278 -.269547 -.067644 -.325746",
                "5 5 .787809 1 1 .575617"
            })
    void printedValues(String me, String opponent, double win, double centred, double mine, double theirs) {
        TwoSidedValue value = table.value(side(me), side(opponent));
        assertEquals(win, value.win(), 6e-7);
        assertEquals(centred, value.centred(), 6e-7);
        assertEquals(mine, value.mine(), 6e-7);
        assertEquals(theirs, value.theirs(), 6e-7);
    }

    /** The same for stacks on the ace point, which a table of one point holds. */
    @ParameterizedTest
    @CsvSource({"7, .745263, .916752, .916752, .458376", "9, .717450, .726911, .753396, .363456"})
    void printedAceStacks(int checkers, double win, double centred, double mine, double theirs) {
        TwoSidedTable aces = TwoSidedTable.build(new SideIndex(1, 9), 1, TableProgress.NONE);
        TwoSidedValue value = aces.value(checkers, checkers);
        assertEquals(win, value.win(), 6e-7);
        assertEquals(centred, value.centred(), 6e-7);
        assertEquals(mine, value.mine(), 6e-7);
        assertEquals(theirs, value.theirs(), 6e-7);
    }

    @Test
    void rowsAreComplete() throws IOException {
        assertEquals(150, cubeless().size());
        assertEquals(110, cube().size());
        assertEquals(35, paradoxes().size());
    }

    /**
     * The smallest chance without gammons that can still be a take is 18.75 %, of one checker on the 6 point against the
     * same (Koca and Yep 1994, as printed): no pair of the table has a smaller one.
     */
    @Test
    void smallestTake() {
        double smallest = 1;
        for (int me = 1; me < table.index().size(); me++) {
            for (int opponent = 1; opponent < table.index().size(); opponent++) {
                TwoSidedValue value = table.value(me, opponent);
                if (2 * value.theirs() <= 1 + EXACT) {
                    smallest = Math.min(smallest, 1 - value.win());
                }
            }
        }
        assertEquals(0.1875, smallest, EXACT);
    }

    @Test
    void coversPairsWithoutGammons() {
        assertTrue(covers("6@1 / 6@6"));
        assertFalse(covers("7@1 / 6@6"));
        assertFalse(covers("6@1 / 6@7"));
        assertTrue(covers("2@1 / 2@6 of 3"));
        assertFalse(covers("3@1 / 2@6 of 3"));
        assertFalse(covers("2@1 / 3@6 of 3"));
    }

    private boolean covers(String text) {
        return table.covers(PositionText.parse(text).toPlanes(), 0);
    }

    @Test
    void threadsMakeNoDifference() {
        SideIndex index = new SideIndex(6, 4);
        assertEquals(
                TwoSidedTable.build(index, 1, TableProgress.NONE).content(),
                TwoSidedTable.build(index, 3, TableProgress.NONE).content());
    }
}
