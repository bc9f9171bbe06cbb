package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.ranking.Depth;

/** A ranking as a table. */
public final class RankText {
    /** Headings of the six columns of chances. */
    static final List<String> CHANCES = List.of("single", "gammon", "backg.", "single", "gammon", "backg.");

    private RankText() {}

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(RankReport report, PrintWriter out) {
        if (report.question().cubeful()) {
            CubefulRankText.write(report, out);
            return;
        }
        Headings.write(
                report.question().position(), "to play " + report.question().roll(), out);
        boolean bases = bases(report.shown());
        out.println(scope(report.ranked(), report.legal(), report.shown().size()) + ", net "
                + report.net().name() + ", "
                + depth(report.shown().stream().map(PlayVerdict::depth))
                + (bases ? "" : ", " + Basis.ESTIMATED.title()));
        out.println();
        boolean games =
                report.shown().stream().anyMatch(ranked -> ranked.depth().games() > 0);
        boolean depths = report.shown().stream()
                        .map(ranked -> depth(ranked.depth()))
                        .distinct()
                        .count()
                > 1;
        List<String> head = new ArrayList<>(List.of("", "play", "equity", "cost", "grade"));
        if (games) {
            head.add(3, "error");
        }
        if (depths) {
            head.add("depth");
        }
        int firstChance = head.size();
        head.addAll(CHANCES);
        if (bases) {
            head.add("basis");
        }
        Table table =
                new Table("rlr" + (games ? "r" : "") + "rl" + (depths ? "r" : "") + "rrrrrr" + (bases ? "l" : ""));
        table.row(head.toArray());
        chanceHeadings(table, firstChance);
        int place = 1;
        for (PlayVerdict ranked : report.shown()) {
            List<Object> cells = cells(place++, ranked, games, depths);
            if (bases) {
                cells.add(ranked.basis().title());
            }
            table.row(cells.toArray());
        }
        table.print(out);
        report.missed().ifPresent(best -> missed(best, Numbers.points(best.value()), out));
        report.explanation().ifPresent(explanation -> ExplainText.write(explanation, RankText::given, out));
    }

    /** Names the best play where only others were asked about. */
    static void missed(PlayVerdict best, String value, PrintWriter out) {
        out.println();
        out.println("best of all: " + best.play() + "  " + value + "; costs are against it");
    }

    /** Whether there is more to say of what values rest on than that they are estimated. */
    static boolean bases(List<PlayVerdict> shown) {
        return shown.stream().anyMatch(play -> play.basis() != Basis.ESTIMATED);
    }

    /** Over the six columns of chances. */
    static void chanceHeadings(Table table, int first) {
        table.group(first, "win, %");
        table.group(first + 3, "lose, %");
        table.group(first + 6, "");
    }

    /** What stands below {@link #CHANCES}. */
    static List<String> chances(Outcomes outcomes) {
        return List.of(
                Numbers.percent(outcomes.winSingle()),
                Numbers.percent(outcomes.winGammon()),
                Numbers.percent(outcomes.winBackgammon()),
                Numbers.percent(outcomes.loseSingle()),
                Numbers.percent(outcomes.loseGammon()),
                Numbers.percent(outcomes.loseBackgammon()));
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
    static String depth(Stream<Depth> depths) {
        List<Depth> all = depths.collect(Collectors.toList());
        String first = all.get(0).toString();
        String least = Collections.max(all, Depth.DEEPEST_FIRST).toString();
        return first.equals(least) ? first : first + " (weaker plays " + least + ")";
    }

    /** The depth of a play among others. */
    static String depth(Depth depth) {
        return depth.games() > 0 ? depth.games() + " games" : depth.lookahead() + " ahead";
    }

    private static String given(PlayVerdict rival) {
        return Numbers.thousandths(-rival.cost()) + " points a game";
    }

    private static List<Object> cells(int place, PlayVerdict ranked, boolean games, boolean depths) {
        List<Object> cells = new ArrayList<>(
                List.of(String.valueOf(place), ranked.play().toString(), Numbers.points(ranked.value())));
        if (games) {
            cells.add(ranked.depth().games() > 0 ? Numbers.size(ranked.depth().error()) : "");
        }
        cells.add(Numbers.cost(ranked.cost()));
        cells.add(Cell.of(ranked.grade()));
        if (depths) {
            cells.add(depth(ranked.depth()));
        }
        cells.addAll(chances(ranked.outcomes()));
        return cells;
    }
}
