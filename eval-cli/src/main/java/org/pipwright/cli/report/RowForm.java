package org.pipwright.cli.report;

import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Rows as CSV (RFC 4180, but for lines that end with a line feed alone) or as a table for fixed-width type.
 *
 * @param <R> what a row is about
 */
final class RowForm<R> {
    private static final String GAP = "  ";

    private static final Pattern SPECIAL = Pattern.compile("[\",\r\n]");

    private final List<Column<R>> columns;
    private final boolean csv;

    private RowForm(List<Column<R>> columns, boolean csv) {
        this.columns = columns;
        this.csv = csv;
    }

    static <R> RowForm<R> csv(List<Column<R>> columns) {
        return new RowForm<>(columns, true);
    }

    /** Cells that are wider than their column push the others to the right. */
    static <R> RowForm<R> table(List<Column<R>> columns) {
        return new RowForm<>(columns, false);
    }

    /** The headings. */
    String head() {
        return line(Column::name);
    }

    /** A row. */
    String row(R about) {
        return line(column -> column.cell().apply(about));
    }

    /** The row of a line without an answer: its number in the first column, and why in the last one. */
    String error(String error, long line) {
        int last = columns.size() - 1;
        return csv
                ? line(column -> column == columns.get(0) ? line : column == columns.get(last) ? error : "")
                : padded(String.valueOf(line), columns.get(0).width()) + GAP + "error: " + error + "\n";
    }

    private String line(Function<Column<R>, Object> cells) {
        List<String> texts = columns.stream()
                .map(column -> String.valueOf(cells.apply(column)))
                .collect(Collectors.toList());
        return (csv
                        ? texts.stream().map(RowForm::quoted).collect(Collectors.joining(","))
                        : IntStream.range(0, texts.size())
                                .mapToObj(
                                        i -> padded(texts.get(i), columns.get(i).width()))
                                .collect(Collectors.joining(GAP))
                                .stripTrailing())
                + "\n";
    }

    private static String quoted(String cell) {
        return SPECIAL.matcher(cell).find() ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }

    private static String padded(String cell, int width) {
        String spaces = " ".repeat(Math.max(0, Math.abs(width) - cell.length()));
        return width < 0 ? spaces + cell : cell + spaces;
    }
}
