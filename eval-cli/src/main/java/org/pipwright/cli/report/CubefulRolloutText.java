package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.Estimate;

/** A rollout with the cube as a table: for each candidate a row of means, and below it their standard errors. */
public final class CubefulRolloutText {
    private CubefulRolloutText() {}

    /**
     * Prints a rollout.
     *
     * @param summary the rollout
     * @param out where to
     */
    public static void write(CubefulRolloutSummary summary, PrintWriter out) {
        boolean plays = summary.roll() != null;
        out.println(summary.position() + (plays ? "  to play " + summary.roll() : "  on roll"));
        out.println(CubeWords.stakes(summary.stakes()) + "; " + CubeWords.cube(summary.cube()));
        out.println(
                (plays
                                ? RankText.scope(
                                                summary.plays().size(),
                                                summary.legal(),
                                                summary.plays().size()) + ", "
                                : "") + "net " + summary.net().name() + ", "
                        + RolloutText.games(summary.report().trials(), summary.settings()));
        out.println();
        Table table = new Table("lrrrrrr");
        table.row("", summary.match() ? "match, %" : "equity", "cost", "luck", "doubled, %", "passed, %", "cube");
        for (CubefulLine line : summary.report().lines()) {
            row(table, summary, line);
        }
        table.print(out);
        out.println();
        summary.values().ifPresent(values -> verdict(summary, values, out));
        notes(summary, out);
    }

    private static void row(Table table, CubefulRolloutSummary summary, CubefulLine line) {
        boolean match = summary.match();
        table.row(
                summary.name(line.candidate()),
                value(match, line.value().mean()),
                cost(match, line.behind().mean()),
                Double.isFinite(line.reduction()) ? Numbers.percent(line.reduction() / 100) + "x" : "",
                Numbers.percent(line.doubled()),
                Numbers.percent(line.passed()),
                Numbers.hundredths(line.cube()));
        table.row("  standard error", error(match, line.value()), error(match, line.behind()), "", "", "", "");
    }

    private static String value(boolean match, double value) {
        return match ? Numbers.finePercent(value) : Numbers.points(value);
    }

    private static String cost(boolean match, double cost) {
        return match ? Numbers.percentCost(cost) : Numbers.cost(cost);
    }

    private static String error(boolean match, Estimate estimate) {
        double error = estimate.standardError();
        return match ? Numbers.finePercent(error) : Numbers.size(error);
    }

    private static void verdict(CubefulRolloutSummary summary, CubeValues values, PrintWriter out) {
        if (values.mayDouble()) {
            out.println("double, pass: " + value(summary.match(), values.doublePass()));
        }
        boolean open = values.mayDouble()
                && Math.abs(values.doubled() - values.noDouble()) < 2 * errorOfDoubling(summary.report(), values);
        out.println(CubeWords.verdict(values, summary.cube(), summary.stakes())
                + (open ? " (Not clear: doubling and rolling are within two standard errors.)" : ""));
    }

    /** Standard error of what doubling, with the best answer, is worth more than rolling. */
    private static double errorOfDoubling(CubefulRolloutReport report, CubeValues values) {
        CubefulLine roll = report.of(CubefulRolloutSummary.ROLL);
        if (values.answer() == CubeAction.PASS) {
            // What a pass gives is known.
            return roll.value().standardError();
        }
        CubefulLine doubled = report.of(
                values.answer() == CubeAction.TAKE ? CubefulRolloutSummary.TAKE : CubefulRolloutSummary.BEAVER);
        int best = report.lines().get(0).candidate();
        if (best == roll.candidate()) {
            return doubled.behind().standardError();
        }
        return best == doubled.candidate()
                ? roll.behind().standardError()
                // Neither was compared with the other; sharing the dice makes it smaller than this as a rule.
                : Math.hypot(roll.value().standardError(), doubled.value().standardError());
    }

    private static void notes(CubefulRolloutSummary summary, PrintWriter out) {
        if (summary.settings().luckAdjusted()) {
            out.println("luck: how many times as many games would be needed without taking luck off");
        }
        out.println(
                "doubled, passed: shares of the games in which that happened later; cube: what it showed in the end");
        CubefulRolloutReport report = summary.report();
        if (report.needed() > 0) {
            out.println("the best is " + (report.clear() ? "" : "not yet ") + "clear: at this look that takes "
                    + Numbers.percent(report.needed() / 100) + " standard errors between it and every other");
        }
        if (!summary.match()) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }
}
