package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.bearoff.RollSpread;

/** Both sides' distributions of rolls to bear off, as bars of characters beside each other. */
final class RollChart {
    /** Chances below this share of the largest are not worth a line. */
    private static final double MIN = 0.0005;

    private static final int WIDEST = 25;

    private RollChart() {}

    static void write(RollSpread onRoll, RollSpread opponent, PrintWriter out) {
        double largest = 0;
        int first = Integer.MAX_VALUE;
        int last = 0;
        for (int rolls = 1; rolls <= Math.max(onRoll.most(), opponent.most()); rolls++) {
            double larger = Math.max(onRoll.exactly(rolls), opponent.exactly(rolls));
            largest = Math.max(largest, larger);
            if (larger >= MIN) {
                first = Math.min(first, rolls);
                last = rolls;
            }
        }
        Table table = new Table("rrlrl");
        table.row("rolls", "on roll, %", "", "opponent, %", "");
        for (int rolls = first; rolls <= last; rolls++) {
            double mine = onRoll.exactly(rolls);
            double theirs = opponent.exactly(rolls);
            table.row(
                    rolls, Numbers.percent(mine), bar(mine / largest), Numbers.percent(theirs), bar(theirs / largest));
        }
        table.print(out);
    }

    private static String bar(double share) {
        return "=".repeat((int) Math.round(WIDEST * share));
    }
}
