package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;

/** A table for fixed-width type: columns as wide as their widest cell, two spaces between them. */
final class Table {
    private final List<List<String>> rows = new ArrayList<>();
    private final boolean[] left;

    /** A table with one column a letter: {@code l} aligns to the left, {@code r} to the right. */
    Table(String alignment) {
        left = new boolean[alignment.length()];
        for (int i = 0; i < left.length; i++) {
            left[i] = alignment.charAt(i) == 'l';
        }
    }

    void row(Object... cells) {
        List<String> row = new ArrayList<>(cells.length);
        for (Object cell : cells) {
            row.add(cell.toString());
        }
        rows.add(row);
    }

    private int width(int column) {
        return rows.stream().mapToInt(row -> row.get(column).length()).max().orElse(0);
    }

    /** Where a column begins, counted from the left edge. */
    int start(int column) {
        int start = 0;
        for (int i = 0; i < column; i++) {
            start += width(i) + 2;
        }
        return start;
    }

    void print(PrintWriter out) {
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < left.length; i++) {
                String gap = " ".repeat(width(i) - row.get(i).length());
                line.append(i > 0 ? "  " : "").append(left[i] ? row.get(i) + gap : gap + row.get(i));
            }
            out.println(line.toString().stripTrailing());
        }
    }
}
