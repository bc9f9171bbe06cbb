package org.pipwright.cli.report;

import java.util.Locale;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableCost;
import org.pipwright.engine.bearoff.TableKind;

/** Words for tables and what they take. */
public final class TableList {
    private static final double MEBI = 1 << 20;

    private TableList() {}

    /**
     * What a table is.
     *
     * @param kind which kind
     * @param index its size
     * @return as in {@code one-sided table, 15 checkers on points 1 to 6}
     */
    public static String title(TableKind kind, SideIndex index) {
        return (kind == TableKind.ONE_SIDED ? "one-sided table, " : "two-sided table, ") + index.checkers()
                + " checkers on points 1 to " + index.points();
    }

    /**
     * A size.
     *
     * @param bytes number of bytes
     * @return in MiB
     */
    public static String size(long bytes) {
        return String.format(Locale.ROOT, bytes < 100 * MEBI ? "%.1f MiB" : "%.0f MiB", bytes / MEBI);
    }

    /**
     * What building takes.
     *
     * @param cost size and time
     * @return in words
     */
    public static String cost(TableCost cost) {
        double seconds = cost.seconds();
        String time =
                seconds < 120 ? Math.max(1, Math.round(seconds)) + " seconds" : Math.round(seconds / 60) + " minutes";
        return "will take about " + size(cost.bytes()) + " and " + time;
    }
}
