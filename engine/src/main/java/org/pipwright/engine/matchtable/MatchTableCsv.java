package org.pipwright.engine.matchtable;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.text.Excerpt;

/**
 * The CSV form of a match table, for people to read and replace. Lines that begin with {@code #} are comments. Then:
 *
 * <pre>
 * away,1,2,3
 * 1,0.5,0.69,0.75
 * 2,0.31,0.5,0.6
 * 3,0.25,0.4,0.5
 * after crawford,0.5,0.48,0.32
 * </pre>
 *
 * The first row counts the points the opponent needs; each row after it begins with the points I need and gives my chance
 * to win the match, from 0 to 1, before the Crawford game where one side needs one point. The last row gives, for the
 * points I need, my chance against an opponent who needs one point in the games after the Crawford game.
 */
@PublicApi
public final class MatchTableCsv {
    /** Longest text accepted, in chars: a table to 200-away. */
    public static final int LIMIT = 1_000_000;

    private static final String CORNER = "away";
    private static final String AFTER = "after crawford";

    private MatchTableCsv() {}

    /**
     * Reads a table.
     *
     * @param text the CSV form
     * @return the table
     * @throws InvalidMatchTableException if the text is no table or the table contradicts itself; one line says where
     */
    public static MatchTable parse(String text) {
        if (text.length() > LIMIT) {
            throw new InvalidMatchTableException(
                    "the match table has " + text.length() + " characters: at most " + LIMIT);
        }
        List<String[]> rows = rows(text);
        if (rows.isEmpty() || !rows.get(0)[0].equals(CORNER)) {
            throw new InvalidMatchTableException("a match table begins with the row '" + CORNER + ",1,2,...'");
        }
        int length = rows.get(0).length - 1;
        if (rows.size() != length + 2) {
            throw new InvalidMatchTableException("a match table to " + length + "-away has " + (length + 2)
                    + " rows, not " + rows.size() + ": '" + CORNER + ",...', one a score, '" + AFTER + ",...'");
        }
        double[][] chances = new double[length + 1][];
        chances[0] = new double[length + 1];
        header(rows.get(0));
        for (int a = 1; a <= length; a++) {
            chances[a] = numbers(rows.get(a), Integer.toString(a), length);
        }
        double[] after = numbers(rows.get(length + 1), AFTER, length);
        try {
            return new MatchTable(chances, after);
        } catch (IllegalArgumentException e) {
            throw new InvalidMatchTableException(e.getMessage());
        }
    }

    private static List<String[]> rows(String text) {
        List<String[]> rows = new ArrayList<>();
        text.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                .forEach(line -> {
                    String[] cells = line.split(",", -1);
                    for (int i = 0; i < cells.length; i++) {
                        cells[i] = cells[i].strip();
                    }
                    rows.add(cells);
                });
        return rows;
    }

    private static void header(String[] cells) {
        for (int b = 1; b < cells.length; b++) {
            if (!cells[b].equals(Integer.toString(b))) {
                throw new InvalidMatchTableException("column " + b + " of the match table is headed '"
                        + Excerpt.of(cells[b]) + "': count the points away from 1 up");
            }
        }
    }

    private static double[] numbers(String[] cells, String name, int length) {
        if (!cells[0].equals(name)) {
            throw new InvalidMatchTableException("a row of the match table begins with '" + Excerpt.of(cells[0])
                    + "': the row '" + name + ",...' belongs there");
        }
        if (cells.length != length + 1) {
            throw new InvalidMatchTableException("the row '" + name + "' of the match table has " + (cells.length - 1)
                    + " chances: it needs " + length);
        }
        double[] numbers = new double[length + 1];
        for (int b = 1; b <= length; b++) {
            // Digits and a point only: no hexadecimal, no 'NaN', no '1e-3' from a spreadsheet's rounding.
            if (!cells[b].matches("[01]?\\.?[0-9]+|[01]\\.")) {
                throw new InvalidMatchTableException("'" + Excerpt.of(cells[b]) + "' in the row '" + name
                        + "' of the match table is not a chance: write a number from 0 to 1");
            }
            numbers[b] = Double.parseDouble(cells[b]);
        }
        return numbers;
    }

    /**
     * The CSV form, chances to a millionth.
     *
     * @param table a table
     * @param comments what to say at its head, one line each, without {@code #}
     * @return text that {@link #parse} reads back
     */
    public static String print(MatchTable table, List<String> comments) {
        int length = table.length();
        StringBuilder text = new StringBuilder();
        comments.forEach(line -> text.append("# ").append(line).append('\n'));
        text.append(CORNER);
        for (int b = 1; b <= length; b++) {
            text.append(',').append(b);
        }
        for (int a = 1; a <= length; a++) {
            text.append('\n').append(a);
            for (int b = 1; b <= length; b++) {
                text.append(chance(table.beforeCrawford(a, b)));
            }
        }
        text.append('\n').append(AFTER);
        for (int n = 1; n <= length; n++) {
            text.append(chance(table.afterCrawford(n)));
        }
        return text.append('\n').toString();
    }

    private static String chance(double value) {
        return String.format(Locale.ROOT, ",%.6f", value);
    }
}
