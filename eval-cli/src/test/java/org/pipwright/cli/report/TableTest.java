package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.Screen;
import org.pipwright.engine.ranking.Grade;

class TableTest {
    private static String print(Table table, Screen screen) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Console console = new Console(new ByteArrayInputStream(new byte[0]), out, out, StandardCharsets.UTF_8, screen);
        table.print(console.out());
        console.out().flush();
        return out.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
    }

    private static Table small() {
        Table table = new Table("rlrrl");
        table.row("", "play", "equity", "cost", "grade");
        table.row(1, "8/5 6/5", "+0.1", "0.0", Cell.of(Grade.FINE));
        table.row(2, "13/9", "-0.05", "-0.15", Cell.of(Grade.HEAVY));
        table.group(2, "points");
        table.group(4, "");
        return table;
    }

    @Test
    void withRoomItIsOneBlock() {
        String expected = "            points\n"
                + "   play     equity   cost  grade\n"
                + "1  8/5 6/5    +0.1    0.0  fine\n"
                + "2  13/9      -0.05  -0.15  heavy\n";
        assertEquals(expected, print(small(), Screen.NONE));
        assertEquals(expected, print(small(), new Screen(32, false)));
    }

    @Test
    void withoutRoomTheRestFollowsBehindTheNames() {
        String expected = "            points\n"
                + "   play     equity   cost\n"
                + "1  8/5 6/5    +0.1    0.0\n"
                + "2  13/9      -0.05  -0.15\n"
                + "\n"
                + "   play     grade\n"
                + "1  8/5 6/5  fine\n"
                + "2  13/9     heavy\n";
        assertEquals(expected, print(small(), new Screen(31, false)));
    }

    @Test
    void coloursChangeNothingElse() {
        String coloured = print(small(), new Screen(0, true));
        assertTrue(coloured.contains("  \u001b[32mfine\u001b[0m\n") && coloured.contains("\u001b[31mheavy\u001b[0m\n"));
        assertEquals(print(small(), Screen.NONE), coloured.replaceAll("\u001b\\[\\d+m", ""));
    }

    /** Random tables on random screens: no line too long that need not be, every cell in its order, names in each block. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void anyTableOnAnyScreen(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int n = 0; n < 300; n++) {
            int columns = 2 + random.nextInt(9);
            Table table = new Table("l" + "r".repeat(columns - 1));
            List<List<String>> rows = new ArrayList<>();
            for (int row = 0; row < 1 + random.nextInt(4); row++) {
                List<String> cells = new ArrayList<>();
                for (int column = 0; column < columns; column++) {
                    cells.add("r" + row + "c" + column + "x".repeat(random.nextInt(6)));
                }
                rows.add(cells);
                table.row(cells.toArray());
            }
            int width = 22 + random.nextInt(60);
            String[] blocks = print(table, new Screen(width, false)).split("\n\n");
            for (int row = 0; row < rows.size(); row++) {
                List<String> found = new ArrayList<>(List.of(rows.get(row).get(0)));
                for (String block : blocks) {
                    String line = block.split("\n")[row];
                    assertTrue(line.length() <= width, line);
                    List<String> cells = Arrays.asList(line.split(" +"));
                    assertEquals(rows.get(row).get(0), cells.get(0));
                    found.addAll(cells.subList(1, cells.size()));
                }
                assertEquals(rows.get(row), found);
            }
        }
    }
}
