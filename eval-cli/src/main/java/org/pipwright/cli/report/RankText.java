package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.ranking.RankedPlay;

/** A ranking as a table. */
public final class RankText {
    private static final int FIRST_CHANCE = 5;

    private RankText() {}

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(RankReport report, PrintWriter out) {
        out.println(report.position() + "  to play " + report.roll());
        out.println(scope(report) + ", net " + report.net().name() + ", " + depth(report));
        out.println();
        Table table = new Table("rlrrlrrrrrr");
        table.row("", "play", "equity", "cost", "grade", "single", "gammon", "backg.", "single", "gammon", "backg.");
        int place = 1;
        for (RankedPlay ranked : report.shown()) {
            row(table, place++, ranked);
        }
        out.println(over(table, FIRST_CHANCE, "win, %", over(table, FIRST_CHANCE + 3, "lose, %", "")));
        table.print(out);
    }

    /** A heading put over the columns from one on, in front of a line that has nothing there yet. */
    private static String over(Table table, int column, String heading, String line) {
        int at = table.start(column);
        String head = " ".repeat(at) + heading;
        return line.length() > head.length() ? head + line.substring(head.length()) : head;
    }

    private static String scope(RankReport report) {
        String plays = report.ranked() == report.legal()
                ? legal(report.legal())
                : report.ranked() + " of " + legal(report.legal());
        return report.shown().size() < report.ranked()
                ? plays + ", best " + report.shown().size()
                : plays;
    }

    private static String legal(int count) {
        return count + (count == 1 ? " legal play" : " legal plays");
    }

    /** The depth of all plays, or of the best and the last. */
    private static String depth(RankReport report) {
        String first = report.shown().get(0).depth().toString();
        String last = report.shown().get(report.shown().size() - 1).depth().toString();
        return first.equals(last) ? first : first + " (weaker plays " + last + ")";
    }

    private static void row(Table table, int place, RankedPlay ranked) {
        Outcomes chances = ranked.outcomes();
        table.row(
                place,
                ranked.play(),
                Numbers.points(ranked.equity()),
                Numbers.cost(ranked.cost()),
                ranked.grade().word(),
                Numbers.percent(chances.winSingle()),
                Numbers.percent(chances.winGammon()),
                Numbers.percent(chances.winBackgammon()),
                Numbers.percent(chances.loseSingle()),
                Numbers.percent(chances.loseGammon()),
                Numbers.percent(chances.loseBackgammon()));
    }
}
