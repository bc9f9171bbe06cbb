package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;

/** A rollout as a table: for each candidate a row of means, and below it their standard errors. */
public final class RolloutText {
    private static final int FIRST_CHANCE = 5;

    private RolloutText() {}

    /**
     * Prints a rollout.
     *
     * @param summary the rollout
     * @param out where to
     */
    public static void write(RolloutSummary summary, PrintWriter out) {
        boolean plays = summary.roll() != null;
        out.println(summary.position() + (plays ? "  to play " + summary.roll() : "  on roll"));
        out.println(scope(summary) + "net " + summary.net().name() + ", "
                + games(summary.report().trials(), summary.settings()));
        out.println();
        Table table = new Table("rlrrrrrrrrr");
        table.row(
                "",
                plays ? "play" : "",
                "equity",
                "cost",
                "luck",
                "single",
                "gammon",
                "backg.",
                "single",
                "gammon",
                "backg.");
        int place = 1;
        for (RolloutLine line : summary.report().lines()) {
            String name = plays ? summary.candidates().get(line.candidate()).toString() : "before the roll";
            table.row(means(plays ? String.valueOf(place++) : "", name, line).toArray());
            table.row(errors(line).toArray());
        }
        RankText.chanceHeadings(table, FIRST_CHANCE);
        table.print(out);
        notes(summary, out);
    }

    private static String scope(RolloutSummary summary) {
        int legal = summary.legal();
        return summary.roll() == null
                ? ""
                : summary.candidates().size() + " of " + legal + (legal == 1 ? " legal play, " : " legal plays, ");
    }

    /** How many games there were, and under which settings. */
    static String games(int trials, RolloutSettings settings) {
        return trials + " games each at lookahead " + settings.lookahead()
                + (settings.truncation() > 0 ? ", truncated after " + settings.truncation() + " rolls" : "")
                + ", seed " + settings.seed();
    }

    private static List<String> means(String place, String name, RolloutLine line) {
        List<String> cells = new ArrayList<>(List.of(
                place,
                name,
                Numbers.points(line.equity().mean()),
                Numbers.cost(line.behind().mean()),
                luck(line.reduction())));
        for (Estimate chance : line.chances()) {
            cells.add(Numbers.percent(chance.mean()));
        }
        return cells;
    }

    private static List<String> errors(RolloutLine line) {
        List<String> cells = new ArrayList<>(List.of(
                "",
                "  standard error",
                Numbers.size(line.equity().standardError()),
                Numbers.size(line.behind().standardError()),
                ""));
        for (Estimate chance : line.chances()) {
            cells.add(Numbers.percent(chance.standardError()));
        }
        return cells;
    }

    private static void notes(RolloutSummary summary, PrintWriter out) {
        RolloutReport report = summary.report();
        out.println();
        if (summary.settings().luckAdjusted()) {
            out.println("luck: how many times as many games would be needed without taking luck off");
        }
        if (report.lines().stream().flatMap(line -> line.chances().stream()).anyMatch(chance -> chance.mean() < 0)) {
            out.println(
                    "a chance below 0 is one near 0: with luck taken off, few games can miss it by their standard error");
        }
        if (report.needed() > 0) {
            String needed = Numbers.size(report.needed()).replaceAll("..$", "");
            out.println("the best play is " + (report.clear() ? "" : "not yet ") + "clear: at this look that takes "
                    + needed + " standard errors between it and every other");
        }
    }

    /** What taking luck off has saved; nothing where there was none. */
    static String luck(double reduction) {
        if (Double.isNaN(reduction)) {
            return "";
        }
        return Double.isInfinite(reduction) ? "all of it" : Numbers.percent(reduction / 100) + "x";
    }
}
