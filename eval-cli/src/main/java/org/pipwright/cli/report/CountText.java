package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.engine.bearoff.DoublingValue;
import org.pipwright.engine.bearoff.SideOutlook;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.measures.EffectivePips;
import org.pipwright.engine.measures.KeithCount;
import org.pipwright.engine.measures.Kleinman;
import org.pipwright.engine.measures.PipRace;
import org.pipwright.engine.measures.Shots;
import org.pipwright.engine.measures.Structure;

/** Counts as text. */
public final class CountText {
    /** Chances below half of the last digit printed are left out. */
    private static final double SHOWN = 0.0005;

    private final CountReport report;
    private final PrintWriter out;

    private CountText(CountReport report, PrintWriter out) {
        this.report = report;
        this.out = out;
    }

    /**
     * Prints the facts of a position.
     *
     * @param report the facts
     * @param out where to
     */
    public static void write(CountReport report, PrintWriter out) {
        new CountText(report, out).write();
    }

    private void write() {
        Headings.write(report.position(), "on roll", out);
        out.println(lead(report.opponent().pips() - report.onRoll().pips()));
        out.println();
        if (report.race().isPresent()) {
            race(report.race().get());
        } else {
            contact();
        }
    }

    private static String lead(int pips) {
        if (pips == 0) {
            return "level in pips";
        }
        return "the side on roll is " + Math.abs(pips) + (Math.abs(pips) == 1 ? " pip " : " pips ")
                + (pips > 0 ? "ahead" : "behind");
    }

    private Table sides() {
        Table table = new Table("lrr");
        table.row("", "on roll", "opponent");
        row(table, "pips", side -> side.pips());
        row(table, "crossovers to come home", side -> side.crossovers().home());
        row(table, "crossovers to bear off", side -> side.crossovers().off());
        return table;
    }

    private void row(Table table, String label, Function<CountReport.Side, Object> fact) {
        table.row(label, fact.apply(report.onRoll()), fact.apply(report.opponent()));
    }

    private void race(CountReport.Race race) {
        SideOutlook mine = race.outlook().onRoll();
        SideOutlook theirs = race.outlook().opponent();
        EffectivePips own = new EffectivePips(report.onRoll().pips(), mine.off().mean());
        EffectivePips other =
                new EffectivePips(report.opponent().pips(), theirs.off().mean());
        Table table = sides();
        double error = EffectivePips.MEAN_ROLL;
        measure(table, "mean rolls to bear off", own.rolls(), mine.error(), other.rolls(), theirs.error(), 3);
        measure(table, "effective pips", own.count(), error * mine.error(), other.count(), error * theirs.error(), 2);
        measure(table, "wastage", own.wastage(), error * mine.error(), other.wastage(), error * theirs.error(), 2);
        table.row("Keith count", race.keith().onRoll(), race.keith().opponent());
        table.print(out);
        if (mine.basis() == Basis.SIMULATED || theirs.basis() == Basis.SIMULATED) {
            out.println("(rolls of "
                    + (mine.basis() == theirs.basis()
                            ? "both sides"
                            : mine.basis() == Basis.SIMULATED ? "the side on roll" : "the opponent")
                    + " estimated: played to the table many times)");
        }
        out.println();
        verdicts(race);
        out.println();
        RollChart.write(mine.off(), theirs.off(), out);
    }

    /** A row, and below it the errors if there are any; digits that are unknown are left out. */
    private static void measure(
            Table table, String label, double mine, double error, double theirs, double theirError, int decimals) {
        int own = digits(error, decimals);
        int other = digits(theirError, decimals);
        table.row(label, number(mine, own), number(theirs, other));
        if (error > 0 || theirError > 0) {
            table.row(
                    "  standard error",
                    error > 0 ? number(error, own) : "",
                    theirError > 0 ? number(theirError, other) : "");
        }
    }

    /** Decimals of which the last is about as large as the error. */
    private static int digits(double error, int most) {
        return error <= 0 ? most : Math.max(0, Math.min(most, (int) Math.ceil(-Math.log10(error) - 0.3)));
    }

    private void verdicts(CountReport.Race race) {
        int mine = report.onRoll().pips();
        int theirs = report.opponent().pips();
        KeithCount keith = race.keith();
        PipRace bare = race.bare();
        Table table = new Table("lrl");
        table.row("", "win, %", "cube, for money");
        table.row(
                race.outlook().basis().title(),
                Numbers.percent(race.outlook().outcomes().win()),
                race.exact().map(exact -> advice(exact.doubling())).orElse(""));
        table.row("Kleinman", Numbers.percent(Kleinman.win(mine, theirs)), "");
        table.row("Keith count", "", advice(keith.doubles(), keith.redoubles(), keith.takes()));
        table.row(
                "bare pips",
                Numbers.percent(bare.win(mine, theirs)),
                advice(
                        bare.centred(mine, theirs).shouldDouble(),
                        bare.owned(mine, theirs).shouldDouble(),
                        bare.centred(mine, theirs).answer() == CubeAction.TAKE));
        table.print(out);
        gammons(race.outlook().outcomes());
        race.exact()
                .ifPresent(exact -> out.println("equity with the cube in the centre "
                        + Numbers.points(exact.value().centred()) + ", mine "
                        + Numbers.points(exact.value().mine())
                        + ", the opponent's " + Numbers.points(exact.value().theirs())));
    }

    private static String advice(DoublingValue doubling) {
        double doubled = Math.min(1, doubling.doubleTake());
        return advice(
                doubled >= doubling.noDoubleCentred() - 1e-8,
                doubled >= doubling.noDoubleMine() - 1e-8,
                doubling.doubleTake() <= 1 + 1e-8);
    }

    private static String advice(boolean doubles, boolean redoubles, boolean takes) {
        return (doubles ? "double" : "no double") + ", " + (redoubles ? "redouble" : "no redouble") + ", "
                + (takes ? "take" : "pass");
    }

    private void gammons(Outcomes outcomes) {
        double won = outcomes.winGammon() + outcomes.winBackgammon();
        double lost = outcomes.loseGammon() + outcomes.loseBackgammon();
        if (won + lost >= SHOWN) {
            out.println("gammons won " + Numbers.percent(won) + " %, lost " + Numbers.percent(lost)
                    + " % (backgammons among them " + Numbers.percent(outcomes.winBackgammon()) + " and "
                    + Numbers.percent(outcomes.loseBackgammon()) + " %)");
        }
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    private void contact() {
        Table table = sides();
        row(table, "made points", side -> list(side.structure().made()));
        row(table, "longest prime", side -> prime(side.structure()));
        row(table, "anchors", side -> list(side.structure().anchors()));
        row(table, "blots", side -> list(side.structure().blots()));
        row(table, "checkers back", side -> side.structure().checkersBack());
        row(table, "on the bar", side -> side.structure().onBar());
        row(table, "rolls that hit, of 36", side -> side.shots().of36());
        table.print(out);
        out.println();
        shots("the side on roll hits with", report.onRoll().shots());
        shots("the opponent, on roll, would hit with", report.opponent().shots());
    }

    private void shots(String who, Shots shots) {
        if (!shots.rolls().isEmpty()) {
            out.println(who + " " + shots.rolls().stream().map(Object::toString).collect(Collectors.joining(", ")));
        }
    }

    private static String list(List<Integer> points) {
        return points.isEmpty() ? "none" : points.stream().map(Object::toString).collect(Collectors.joining(" "));
    }

    private static String prime(Structure structure) {
        int length = structure.primeLength();
        if (length == 0) {
            return "none";
        }
        int from = structure.primeFrom();
        return length + (length == 1 ? " (" + from + ")" : " (" + from + "-" + (from + length - 1) + ")");
    }
}
