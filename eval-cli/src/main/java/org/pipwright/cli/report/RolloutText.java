package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.rollout.ActionStanding;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;

/** A rollout as a table: for each candidate a row of means, and below it their standard errors. */
public final class RolloutText {
    private static final int FIRST_CHANCE = 5;

    /** More standard errors than this say nothing more. */
    private static final int MANY = 100;

    /** Rounding. */
    private static final double NOTHING = 1e-9;

    private RolloutText() {}

    /**
     * Prints a rollout.
     *
     * @param summary the rollout
     * @param out where to
     */
    public static void write(RolloutSummary summary, PrintWriter out) {
        Question question = summary.question();
        Headings.write(question.position(), summary.ofPlays() ? "to play " + question.roll() : "on roll", out);
        if (question.cubeful()) {
            out.println(CubeWords.stakes(question.stakes()) + "; " + CubeWords.cube(question.cube()));
        }
        out.println(scope(summary) + "net " + summary.net().name() + ", "
                + games(summary.report().trials(), summary.settings()));
        out.println();
        if (question.cubeful()) {
            valueTable(summary, out);
        } else {
            chanceTable(summary, out);
        }
        out.println();
        summary.report().actions().ifPresent(actions -> verdict(summary, actions, out));
        notes(summary, out);
    }

    private static String scope(RolloutSummary summary) {
        int compared = summary.plays().size();
        int legal = summary.legal();
        if (!summary.ofPlays()) {
            return "";
        }
        return summary.question().cubeful()
                ? RankText.scope(compared, legal, compared) + ", "
                : compared + " of " + legal + (legal == 1 ? " legal play, " : " legal plays, ");
    }

    /** How many games there were, and under which settings. */
    private static String games(int trials, RolloutSettings settings) {
        return trials + " games each at lookahead " + settings.lookahead()
                + (settings.truncation() > 0 ? ", truncated after " + settings.truncation() + " rolls" : "")
                + ", seed " + settings.seed();
    }

    private static void chanceTable(RolloutSummary summary, PrintWriter out) {
        boolean plays = summary.ofPlays();
        Table table = new Table("rlrrrrrrrrr");
        table.row(
                "",
                plays ? "play" : "",
                "equity",
                "cost",
                "reduction",
                "single",
                "gammon",
                "backg.",
                "single",
                "gammon",
                "backg.");
        int place = 1;
        for (RolloutLine line : summary.report().lines()) {
            List<String> means = new ArrayList<>(List.of(
                    plays ? String.valueOf(place++) : "",
                    summary.names().get(line.candidate()),
                    Numbers.points(line.value().mean()),
                    Numbers.cost(line.behind().mean()),
                    reduction(line.reduction())));
            List<String> errors = new ArrayList<>(
                    List.of("", "  standard error", error(false, line.value()), error(false, line.behind()), ""));
            for (Estimate chance : line.chances()) {
                means.add(Numbers.percent(chance.mean()));
                errors.add(Numbers.percent(chance.standardError()));
            }
            table.row(means.toArray());
            table.row(errors.toArray());
        }
        RankText.chanceHeadings(table, FIRST_CHANCE);
        table.print(out);
    }

    private static void valueTable(RolloutSummary summary, PrintWriter out) {
        boolean match = summary.match();
        Table table = new Table("lrrrrrr");
        table.row("", match ? "match, %" : "equity", "cost", "reduction", "doubled, %", "passed, %", "cube");
        for (RolloutLine line : summary.report().lines()) {
            RolloutLine.Cube cube = line.cube().orElseThrow();
            table.row(
                    summary.names().get(line.candidate()),
                    value(match, line.value().mean()),
                    cost(match, line.behind().mean()),
                    reduction(line.reduction()),
                    Numbers.percent(cube.doubled()),
                    Numbers.percent(cube.passed()),
                    Numbers.hundredths(cube.shown()));
            table.row("  standard error", error(match, line.value()), error(match, line.behind()), "", "", "", "");
        }
        table.print(out);
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

    /** What variance reduction has saved; nothing where there was none. */
    private static String reduction(double reduction) {
        if (Double.isNaN(reduction)) {
            return "";
        }
        return Double.isInfinite(reduction) ? "all of it" : Numbers.percent(reduction / 100) + "x";
    }

    private static void verdict(RolloutSummary summary, ActionStanding actions, PrintWriter out) {
        CubeValues values = actions.values();
        if (values.mayDouble()) {
            double cost = values.cost(CubeAction.PASS);
            out.println("double, pass: " + value(summary.match(), values.doublePass())
                    + (cost == 0 ? "" : ", cost " + cost(summary.match(), cost)));
        }
        out.println(CubeWords.verdict(
                values, summary.question().cube(), summary.question().stakes()));
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
                        : error <= NOTHING ? "no error" : errors(apart / error) + " standard errors");
        return text + (needed > 0 ? ": " + clarity(choice.clarity(), needed) : apart < 2 * error ? ": not clear" : "");
    }

    private static String errors(double number) {
        return number > MANY ? "more than " + MANY : Numbers.percent(number / 100);
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

    private static void notes(RolloutSummary summary, PrintWriter out) {
        boolean withCube = summary.question().cubeful();
        if (summary.settings().luckAdjusted()) {
            out.println("reduction: of the variance; how many times as many games would be needed without it");
        }
        if (withCube) {
            out.println(
                    "doubled, passed: shares of the games in which that happened later; cube: what it showed in the end");
        }
        RolloutReport report = summary.report();
        if (report.lines().stream().flatMap(line -> line.chances().stream()).anyMatch(chance -> chance.mean() < 0)) {
            out.println(
                    "a chance below 0 is one near 0: with luck taken off, few games can miss it by their standard error");
        }
        if (report.needed() > 0) {
            out.println("the best " + (withCube ? "" : "play ") + "is " + (report.clear() ? "" : "not yet ")
                    + "clear: at this look that takes " + Numbers.hundredths(report.needed())
                    + " standard errors between it and every other");
        }
        if (withCube && !summary.match()) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }
}
