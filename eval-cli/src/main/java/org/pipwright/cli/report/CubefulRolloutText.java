package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.rollout.ActionStanding;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.Estimate;

/** A rollout with the cube as a table: for each candidate a row of means, and below it their standard errors. */
public final class CubefulRolloutText {
    /** Rounding. */
    private static final double NOTHING = 1e-9;

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
        summary.report().actions().ifPresent(actions -> verdict(summary, actions, out));
        notes(summary, out);
    }

    private static void row(Table table, CubefulRolloutSummary summary, CubefulLine line) {
        boolean match = summary.match();
        table.row(
                summary.name(line.candidate()),
                value(match, line.value().mean()),
                cost(match, line.behind().mean()),
                RolloutText.luck(line.reduction()),
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

    private static void verdict(CubefulRolloutSummary summary, ActionStanding actions, PrintWriter out) {
        CubeValues values = actions.values();
        if (values.mayDouble()) {
            double cost = values.cost(CubeAction.PASS);
            out.println("double, pass: " + value(summary.match(), values.doublePass())
                    + (cost == 0 ? "" : ", cost " + cost(summary.match(), cost)));
        }
        out.println(CubeWords.verdict(values, summary.cube(), summary.stakes()));
        actions.choices().forEach(choice -> out.println(choice(summary.match(), choice, actions.needed())));
    }

    /** What a choice is between. */
    static String between(ActionStanding.Kind kind) {
        switch (kind) {
            case DOUBLE_OR_ROLL:
                return "doubling and rolling";
            case TAKE_OR_PASS:
                return "taking and passing";
            default:
                return "beavering and taking";
        }
    }

    private static String choice(boolean match, ActionStanding.Choice choice, double needed) {
        double apart = Math.abs(choice.difference().mean());
        double error = choice.difference().standardError();
        String text = between(choice.kind()) + ": " + (match ? Numbers.finePercent(apart) : Numbers.size(apart))
                + " apart, "
                + (apart <= NOTHING || error > 0 && apart < error / 100
                        ? "the same"
                        : error <= NOTHING ? "no error" : Numbers.percent(apart / error / 100) + " standard errors");
        return text + (needed > 0 ? ": " + clarity(choice.clarity(), needed) : apart < 2 * error ? ": not clear" : "");
    }

    private static String clarity(ActionStanding.Clarity clarity, double needed) {
        switch (clarity) {
            case CLEAR:
                return "clear";
            case CLOSE:
                return "known to lie within 0.01 points of each other";
            default:
                return "not yet clear, which takes " + Numbers.percent(needed / 100) + " at this look";
        }
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
