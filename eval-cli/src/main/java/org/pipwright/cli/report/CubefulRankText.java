package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.ranking.RankedPlay;

/** A ranking with the cube as a table. */
public final class CubefulRankText {
    private final CubefulRankReport report;
    private final List<CubefulPlay> shown;
    private final boolean games;
    private final boolean depths;
    private final boolean exact;

    private CubefulRankText(CubefulRankReport report) {
        this.report = report;
        shown = report.shown();
        games = shown.stream().anyMatch(play -> play.depth().games() > 0);
        depths = shown.stream()
                        .map(play -> RankText.depth(play.depth()))
                        .distinct()
                        .count()
                > 1;
        exact = shown.stream().anyMatch(CubefulPlay::exact);
    }

    /**
     * Prints a ranking.
     *
     * @param report the ranking
     * @param out where to
     */
    public static void write(CubefulRankReport report, PrintWriter out) {
        new CubefulRankText(report).write(out);
    }

    private void write(PrintWriter out) {
        out.println(report.position() + "  to play " + report.roll());
        out.println(CubeWords.stakes(report.stakes()) + "; " + CubeWords.cube(report.cube()));
        out.println(RankText.scope(report.ranked(), report.legal(), shown.size()) + ", net "
                + report.net().name() + ", "
                + RankText.depth(shown.stream().map(CubefulPlay::depth)));
        out.println();
        table().print(out);
        if (games) {
            out.println();
            out.println("Games tell the value with the cube; the cubeless figures are those of lookahead "
                    + shown.get(0).lookahead() + ".");
        }
        report.explanation().ifPresent(explanation -> {
            ExplainText.write(explanation, this::given, out);
            out.println();
            out.println("Points that rolls cost or bring leave the cube out.");
        });
        if (!report.match()) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    private Table table() {
        Table table = new Table("rlr" + (games ? "r" : "") + "rlrrrrrrr" + (depths ? "r" : "") + (exact ? "l" : ""));
        List<String> head = new ArrayList<>(List.of("", "play", report.match() ? "match, %" : "equity"));
        if (games) {
            head.add("error");
        }
        head.addAll(List.of("cost", "grade", "cubeless"));
        int firstChance = head.size();
        head.addAll(RankText.CHANCES);
        if (depths) {
            head.add("depth");
        }
        if (exact) {
            head.add("basis");
        }
        table.row(head.toArray());
        RankText.chanceHeadings(table, firstChance);
        for (int i = 0; i < shown.size(); i++) {
            table.row(cells(i + 1, shown.get(i)).toArray());
        }
        return table;
    }

    private List<Object> cells(int place, CubefulPlay play) {
        boolean match = report.match();
        List<Object> cells = new ArrayList<>(List.of(
                String.valueOf(place),
                play.play().toString(),
                match ? Numbers.finePercent(play.value()) : Numbers.points(play.value())));
        if (games) {
            cells.add(play.depth().games() > 0 ? error(play.depth().error()) : "");
        }
        cells.add(match ? Numbers.percentCost(play.cost()) : Numbers.cost(play.cost()));
        cells.add(Cell.of(play.grade()));
        cells.add(Numbers.points(play.outcomes().equity()));
        cells.addAll(RankText.chances(play.outcomes()));
        if (depths) {
            cells.add(RankText.depth(play.depth()));
        }
        if (exact) {
            cells.add(play.exact() ? "exact" : "estimated");
        }
        return cells;
    }

    private String error(double error) {
        return report.match() ? Numbers.finePercent(error) : Numbers.size(error);
    }

    /** What a rival gives away, in the unit of the table. */
    private String given(RankedPlay rival) {
        double cost = shown.stream()
                .filter(play -> play.play().equals(rival.play()))
                .findFirst()
                .orElseThrow()
                .cost();
        return report.match()
                ? Numbers.finePercent(-cost) + " % of the match"
                : Numbers.thousandths(-cost) + " points with the cube";
    }
}
