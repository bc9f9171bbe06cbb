package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;

/** A cube decision as text. */
public final class CubeText {
    private CubeText() {}

    /**
     * Prints a decision.
     *
     * @param report the decision
     * @param out where to
     */
    public static void write(CubeReport report, PrintWriter out) {
        Headings.write(report.position(), "on roll", out);
        out.println(CubeWords.stakes(report.stakes()) + "; " + CubeWords.cube(report.cube()));
        out.println("net " + report.net().name() + ", " + basis(report));
        out.println();
        chances(report.outcomes()).print(out);
        out.println();
        values(report).print(out);
        out.println();
        out.println(CubeWords.verdict(report));
        String note = CubeWords.note(report);
        if (!note.isEmpty()) {
            out.println(note);
        }
        if (report.values().mayDouble()) {
            report.window().ifPresent(window -> out.println(window(window, report)));
            report.market()
                    .ifPresent(market -> out.println(
                            "market losers: " + Numbers.percent(market.losers()) + " % of the next two rolls"));
        }
        if (report.match()) {
            out.println(report.gammons()
                    .map(CubeText::gammons)
                    .orElse("no gammon value at this cube: by the match table a single game decides nothing"));
        }
        if (!report.why().isEmpty()) {
            out.println();
            out.println("Why");
            report.why().forEach(sentence -> out.println("  " + sentence));
        }
        if (!report.match()) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    private static String gammons(GammonValues values) {
        return "gammon value at this cube: " + Numbers.hundredths(values.mine()) + " for the side on roll, "
                + Numbers.hundredths(values.theirs()) + " for the opponent (0.50 in money play)";
    }

    private static String basis(CubeReport report) {
        switch (report.basis()) {
            case EXACT:
                return "exact table";
            case SIMULATED:
                return "race played out many times";
            case DISTRIBUTIONS:
                return "race, chances from distributions";
            default:
                return "lookahead " + report.lookahead();
        }
    }

    private static Table chances(Outcomes outcomes) {
        Table table = new Table("lrrrr");
        table.row("", "single", "gammon", "backgammon", "together");
        OddsReport.row(table, "win, %", outcomes);
        OddsReport.row(table, "lose, %", outcomes.swapped());
        return table;
    }

    private static Table values(CubeReport report) {
        CubeValues values = report.values();
        Table table = new Table("lrlr");
        table.row("", report.match() ? "win match, %" : "equity", "action", "cost");
        row(table, report, "roll", values.noDouble(), CubeAction.ROLL);
        if (!values.mayDouble()) {
            return table;
        }
        row(table, report, "double, take", values.doubleTake(), CubeAction.TAKE);
        row(table, report, "double, pass", values.doublePass(), CubeAction.PASS);
        if (values.mayBeaver()) {
            row(table, report, "double, beaver", values.doubleBeaver(), CubeAction.BEAVER);
        }
        table.row("double, best answer", number(report, values.doubled()), "double", cost(report, CubeAction.DOUBLE));
        return table;
    }

    private static void row(Table table, CubeReport report, String label, double value, CubeAction action) {
        table.row(label, number(report, value), CubeWords.action(action), cost(report, action));
    }

    private static String number(CubeReport report, double value) {
        return report.match() ? Numbers.finePercent(value) : Numbers.points(value);
    }

    private static String cost(CubeReport report, CubeAction action) {
        double cost = report.values().cost(action);
        return report.match() ? Numbers.percentCost(cost) : Numbers.cost(cost);
    }

    private static String window(CubeWindow window, CubeReport report) {
        double win = report.outcomes().win();
        String on = report.basis() == Basis.EXACT ? "on the last rolls, " : "";
        String take = on + "take point " + Numbers.percent(window.takePoint()) + " % (the opponent has "
                + Numbers.percent(1 - win) + " %)";
        if (Double.isNaN(window.from())) {
            return take + "; no chance at which to double";
        }
        double pass = 1 - window.takePoint();
        double upper = Math.min(pass, window.to());
        String doubling = window.from() < upper
                ? "doubling window " + Numbers.percent(window.from()) + " to " + Numbers.percent(upper)
                : "doubling right from " + Numbers.percent(window.from());
        String beyond = pass < window.to() ? "; above " + Numbers.percent(pass) + " % the opponent passes" : "";
        String wrong = window.to() < 1 ? "; no double above " + Numbers.percent(window.to()) + " %" : "";
        return take + "; " + doubling + " % (the side on roll has " + Numbers.percent(win) + " %)" + beyond + wrong;
    }
}
