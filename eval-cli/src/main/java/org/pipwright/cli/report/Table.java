package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.Screen;

/**
 * A table for fixed-width type: columns as wide as their widest cell, two spaces between them. Where a screen is too
 * narrow, the columns that do not fit follow in further blocks, each behind the first columns up to the one of names.
 */
final class Table {
    private static final String GAP = "  ";

    private final List<List<Cell>> rows = new ArrayList<>();
    private final Map<Integer, String> groups = new TreeMap<>();
    private final boolean[] left;
    private final int names;

    /** A table with one column a letter: {@code l} aligns to the left, {@code r} to the right. */
    Table(String alignment) {
        left = new boolean[alignment.length()];
        for (int i = 0; i < left.length; i++) {
            left[i] = alignment.charAt(i) == 'l';
        }
        names = alignment.indexOf('l') + 1;
    }

    /** A line of cells: {@link Cell}s, or anything that has a text. */
    void row(Object... cells) {
        List<Cell> row = new ArrayList<>(cells.length);
        for (Object cell : cells) {
            row.add(cell instanceof Cell styled ? styled : new Cell(cell.toString(), Cell.PLAIN));
        }
        rows.add(row);
    }

    /** Puts a heading over the columns from one on, above the first line. */
    void group(int column, String heading) {
        groups.put(column, heading);
    }

    void print(PrintWriter out) {
        Screen screen = Console.screen(out);
        int[] widths = widths();
        boolean first = true;
        for (List<Integer> block : blocks(screen.columns(), widths)) {
            if (!first) {
                out.println();
            }
            first = false;
            print(block, widths, screen.colour(), out);
        }
    }

    /** Of each column, that of its widest cell. */
    private int[] widths() {
        int[] widths = new int[left.length];
        for (List<Cell> row : rows) {
            for (int column = 0; column < widths.length; column++) {
                widths[column] = Math.max(widths[column], row.get(column).text().length());
            }
        }
        return widths;
    }

    /** The columns of each block; a single one if there is room, or no limit. */
    private List<List<Integer>> blocks(int room, int[] widths) {
        List<List<Integer>> blocks = new ArrayList<>();
        List<Integer> block = new ArrayList<>();
        int used = 0;
        for (int column = 0; column < left.length; column++) {
            int wider = (block.isEmpty() ? 0 : GAP.length()) + widths[column];
            if (room > 0 && used + wider > room && block.size() > names) {
                blocks.add(block);
                block = new ArrayList<>();
                used = 0;
                for (int name = 0; name < names; name++) {
                    block.add(name);
                    used += widths[name] + (name > 0 ? GAP.length() : 0);
                }
                wider = GAP.length() + widths[column];
            }
            block.add(column);
            used += wider;
        }
        blocks.add(block);
        return blocks;
    }

    private void print(List<Integer> block, int[] widths, boolean colour, PrintWriter out) {
        String headings = headings(block, widths);
        if (!headings.isEmpty()) {
            out.println(headings);
        }
        for (List<Cell> row : rows) {
            StringBuilder line = new StringBuilder();
            int spaces = 0;
            for (int column : block) {
                Cell cell = row.get(column);
                int padding = widths[column] - cell.text().length();
                spaces += line.length() == 0 && spaces == 0 && column == block.get(0) ? 0 : GAP.length();
                spaces += left[column] ? 0 : padding;
                if (!cell.text().isEmpty()) {
                    line.append(" ".repeat(spaces)).append(colour ? cell.coloured() : cell.text());
                    spaces = 0;
                }
                spaces += left[column] ? padding : 0;
            }
            out.println(line.toString().stripTrailing());
        }
    }

    private String headings(List<Integer> block, int[] widths) {
        StringBuilder line = new StringBuilder();
        String current = null;
        int start = 0;
        for (int column : block) {
            String heading = group(column);
            if (heading != null && !heading.equals(current)) {
                line.append(" ".repeat(Math.max(0, start - line.length()))).append(heading);
            }
            current = heading;
            start += widths[column] + GAP.length();
        }
        return line.toString();
    }

    /** The heading over a column: that of the group it belongs to, which ends where the next begins. */
    private String group(int column) {
        String heading = null;
        for (Map.Entry<Integer, String> group : groups.entrySet()) {
            heading = group.getKey() <= column ? group.getValue() : heading;
        }
        return heading == null || heading.isEmpty() ? null : heading;
    }
}
