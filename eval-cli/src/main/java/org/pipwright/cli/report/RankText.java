package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.ranking.Depth;

/** A ranking as a table, with and without a cube. */
public final class RankText {
    /** Headings of the six columns of chances. */
    private static final List<String> CHANCES = List.of("single", "gammon", "backg.", "single", "gammon", "backg.");

    private final RankReport report;
    private final List<PlayVerdict> shown;
    private final boolean cube;
    private final boolean match;
    private final boolean games;
    private final boolean bases;

    /** A column behind the places: its heading, whether it is of words, and what a play has in it. */
    private record Column(String heading, boolean words, Function<PlayVerdict, Object> cell) {}

    private RankText(RankReport report) {
        this.report = report;
        shown = report.shown();
        cube = report.question().cubeful();
        match = report.question().stakes() instanceof MatchStakes;
        games = shown.stream().anyMatch(play -> play.depth().games() > 0);
        bases = shown.stream().anyMatch(play -> play.basis() != Basis.ESTIMATED);
    }

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(RankReport report, PrintWriter out) {
        new RankText(report).write(out);
    }

    private void write(PrintWriter out) {
        Question question = report.question();
        Headings.write(question.position(), "to play " + question.roll(), out);
        if (cube) {
            out.println(CubeWords.stakes(question.stakes()) + "; " + CubeWords.cube(question.cube()));
        }
        out.println(scope(report.ranked(), report.legal(), shown.size()) + ", net "
                + report.net().name() + ", "
                + depth(shown.stream().map(PlayVerdict::depth))
                + (cube || bases ? "" : ", " + Basis.ESTIMATED.title()));
        out.println();
        table().print(out);
        report.missed().ifPresent(best -> missed(best, out));
        if (cube && games) {
            out.println();
            out.println("Games tell the value with the cube; the cubeless figures are those of lookahead "
                    + shown.get(0).lookahead() + ".");
        }
        report.explanation().ifPresent(explanation -> explain(explanation, out));
        if (cube && !match) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    /** Names the best play where only others were asked about. */
    private void missed(PlayVerdict best, PrintWriter out) {
        out.println();
        out.println("best of all: " + best.play() + "  " + value(best.value()) + (match ? " %" : "")
                + "; costs are against it");
    }

    private void explain(Explanation explanation, PrintWriter out) {
        ExplainText.write(explanation, this::given, out);
        if (cube) {
            out.println();
            out.println("Points that rolls cost or bring leave the cube out.");
        }
    }

    private Table table() {
        List<Column> columns = new ArrayList<>(worth());
        Column depth = new Column("depth", false, play -> depth(play.depth()));
        boolean depths = shown.stream().map(depth.cell).distinct().count() > 1;
        if (depths && !cube) {
            columns.add(depth);
        }
        int firstChance = 1 + columns.size();
        for (int k = 0; k < CHANCES.size(); k++) {
            int chance = k;
            columns.add(new Column(CHANCES.get(k), false, play -> Numbers.percent(chance(play.outcomes(), chance))));
        }
        if (depths && cube) {
            columns.add(depth);
        }
        if (bases) {
            columns.add(new Column("basis", true, play -> play.basis().title()));
        }
        Table table = new Table(
                "r" + columns.stream().map(each -> each.words ? "l" : "r").collect(Collectors.joining()));
        table.row(row("", columns, Column::heading));
        chanceHeadings(table, firstChance);
        for (int i = 0; i < shown.size(); i++) {
            PlayVerdict play = shown.get(i);
            table.row(row(String.valueOf(i + 1), columns, each -> each.cell.apply(play)));
        }
        return table;
    }

    private static Object[] row(String place, List<Column> columns, Function<Column, Object> cell) {
        return Stream.concat(Stream.of(place), columns.stream().map(cell)).toArray();
    }

    /** The play, what it is worth and what it costs. */
    private List<Column> worth() {
        List<Column> columns = new ArrayList<>();
        columns.add(new Column("play", true, play -> play.play().toString()));
        columns.add(new Column(match ? "match, %" : "equity", false, play -> value(play.value())));
        if (games) {
            columns.add(new Column("error", false, play -> play.depth().games() > 0 ? error(play.error()) : ""));
        }
        columns.add(new Column(
                "cost", false, play -> match ? Numbers.percentCost(play.cost()) : Numbers.cost(play.cost())));
        columns.add(new Column("grade", true, play -> Cell.of(play.grade())));
        if (cube) {
            columns.add(new Column("cubeless", false, play -> Numbers.points(play.equity())));
        }
        return columns;
    }

    private String value(double value) {
        return match ? Numbers.finePercent(value) : Numbers.points(value);
    }

    private String error(double error) {
        return match ? Numbers.finePercent(error) : Numbers.size(error);
    }

    /** What a rival gives away, in the unit of the table. */
    private String given(PlayVerdict rival) {
        return match
                ? Numbers.finePercent(-rival.cost()) + " % of the match"
                : Numbers.thousandths(-rival.cost()) + (cube ? " points with the cube" : " points a game");
    }

    /** Over the six columns of chances. */
    static void chanceHeadings(Table table, int first) {
        table.group(first, "win, %");
        table.group(first + 3, "lose, %");
        table.group(first + 6, "");
    }

    /** What stands below one of {@link #CHANCES}. */
    private static double chance(Outcomes outcomes, int of) {
        return switch (of) {
            case 0 -> outcomes.winSingle();
            case 1 -> outcomes.winGammon();
            case 2 -> outcomes.winBackgammon();
            case 3 -> outcomes.loseSingle();
            case 4 -> outcomes.loseGammon();
            default -> outcomes.loseBackgammon();
        };
    }

    /** How many plays there are, were ranked and are shown. */
    static String scope(int ranked, int legal, int shown) {
        String plays = ranked == legal ? legal(legal) : ranked + " of " + legal(legal);
        return shown < ranked ? plays + ", best " + shown : plays;
    }

    private static String legal(int count) {
        return count + (count == 1 ? " legal play" : " legal plays");
    }

    /** The depth of all plays, or of the best, which is given first, and of those looked at least. */
    private static String depth(Stream<Depth> depths) {
        List<Depth> all = depths.collect(Collectors.toList());
        String first = all.get(0).toString();
        String least = Collections.max(all, Depth.DEEPEST_FIRST).toString();
        return first.equals(least) ? first : first + " (weaker plays " + least + ")";
    }

    /** The depth of a play among others. */
    private static String depth(Depth depth) {
        return depth.games() > 0 ? depth.games() + " games" : depth.lookahead() + " ahead";
    }
}
