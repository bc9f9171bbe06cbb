package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.evaluation.Outcomes;

/** A ranking with the cube as a table. */
public final class CubefulRankText {
    private static final int FIRST_CHANCE = 6;

    private CubefulRankText() {}

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(CubefulRankReport report, PrintWriter out) {
        out.println(report.position() + "  to play " + report.roll());
        out.println(CubeWords.stakes(report.stakes()) + "; " + CubeWords.cube(report.cube()));
        int deepest = report.shown().get(0).lookahead();
        out.println(
                RankText.scope(report.ranked(), report.legal(), report.shown().size()) + ", net "
                        + report.net().name() + ", lookahead " + deepest);
        out.println();
        boolean depths = report.shown().stream().anyMatch(play -> play.lookahead() != deepest);
        boolean exact = report.shown().stream().anyMatch(CubefulPlay::exact);
        Table table = new Table("rlrrlr" + "rrrrrr" + (depths ? "r" : "") + (exact ? "l" : ""));
        List<String> head =
                new ArrayList<>(List.of("", "play", report.match() ? "match, %" : "equity", "cost", "grade"));
        head.addAll(List.of("cubeless", "single", "gammon", "backg.", "single", "gammon", "backg."));
        if (depths) {
            head.add("depth");
        }
        if (exact) {
            head.add("basis");
        }
        table.row(head.toArray());
        RankText.chanceHeadings(table, FIRST_CHANCE);
        int place = 1;
        for (CubefulPlay play : report.shown()) {
            List<Object> cells = cells(report, place++, play);
            if (depths) {
                cells.add(play.lookahead() + " ahead");
            }
            if (exact) {
                cells.add(play.exact() ? "exact" : "estimated");
            }
            table.row(cells.toArray());
        }
        table.print(out);
        if (!report.match()) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    private static List<Object> cells(CubefulRankReport report, int place, CubefulPlay play) {
        boolean match = report.match();
        Outcomes chances = play.outcomes();
        return new ArrayList<>(List.of(
                String.valueOf(place),
                play.play().toString(),
                match ? Numbers.finePercent(play.value()) : Numbers.points(play.value()),
                match ? Numbers.percentCost(play.cost()) : Numbers.cost(play.cost()),
                Cell.of(play.grade()),
                Numbers.points(chances.equity()),
                Numbers.percent(chances.winSingle()),
                Numbers.percent(chances.winGammon()),
                Numbers.percent(chances.winBackgammon()),
                Numbers.percent(chances.loseSingle()),
                Numbers.percent(chances.loseGammon()),
                Numbers.percent(chances.loseBackgammon())));
    }
}
