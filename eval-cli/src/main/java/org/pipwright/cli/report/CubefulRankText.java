package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.PlayVerdict;

/** A ranking with the cube as a table. */
final class CubefulRankText {
    private final RankReport report;
    private final List<PlayVerdict> shown;
    private final boolean match;
    private final boolean games;
    private final boolean depths;
    private final boolean bases;

    private CubefulRankText(RankReport report) {
        this.report = report;
        shown = report.shown();
        match = report.question().stakes() instanceof MatchStakes;
        games = shown.stream().anyMatch(play -> play.depth().games() > 0);
        depths = shown.stream()
                        .map(play -> RankText.depth(play.depth()))
                        .distinct()
                        .count()
                > 1;
        bases = RankText.bases(shown);
    }

    /** Prints a ranking. */
    static void write(RankReport report, PrintWriter out) {
        new CubefulRankText(report).write(out);
    }

    private void write(PrintWriter out) {
        Headings.write(
                report.question().position(), "to play " + report.question().roll(), out);
        out.println(CubeWords.stakes(report.question().stakes()) + "; "
                + CubeWords.cube(report.question().cube()));
        out.println(RankText.scope(report.ranked(), report.legal(), shown.size()) + ", net "
                + report.net().name() + ", "
                + RankText.depth(shown.stream().map(PlayVerdict::depth)));
        out.println();
        table().print(out);
        report.missed().ifPresent(best -> RankText.missed(best, value(best), out));
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
        if (!match) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    private Table table() {
        Table table = new Table("rlr" + (games ? "r" : "") + "rlrrrrrrr" + (depths ? "r" : "") + (bases ? "l" : ""));
        List<String> head = new ArrayList<>(List.of("", "play", match ? "match, %" : "equity"));
        if (games) {
            head.add("error");
        }
        head.addAll(List.of("cost", "grade", "cubeless"));
        int firstChance = head.size();
        head.addAll(RankText.CHANCES);
        if (depths) {
            head.add("depth");
        }
        if (bases) {
            head.add("basis");
        }
        table.row(head.toArray());
        RankText.chanceHeadings(table, firstChance);
        for (int i = 0; i < shown.size(); i++) {
            table.row(cells(i + 1, shown.get(i)).toArray());
        }
        return table;
    }

    private List<Object> cells(int place, PlayVerdict play) {
        List<Object> cells = new ArrayList<>(List.of(
                String.valueOf(place),
                play.play().toString(),
                match ? Numbers.finePercent(play.value()) : Numbers.points(play.value())));
        if (games) {
            cells.add(play.depth().games() > 0 ? error(play.depth().error()) : "");
        }
        cells.add(match ? Numbers.percentCost(play.cost()) : Numbers.cost(play.cost()));
        cells.add(Cell.of(play.grade()));
        cells.add(Numbers.points(play.equity()));
        cells.addAll(RankText.chances(play.outcomes()));
        if (depths) {
            cells.add(RankText.depth(play.depth()));
        }
        if (bases) {
            cells.add(play.basis().title());
        }
        return cells;
    }

    private String value(PlayVerdict play) {
        return match ? Numbers.finePercent(play.value()) + " %" : Numbers.points(play.value());
    }

    private String error(double error) {
        return match ? Numbers.finePercent(error) : Numbers.size(error);
    }

    /** What a rival gives away, in the unit of the table. */
    private String given(PlayVerdict rival) {
        return match
                ? Numbers.finePercent(-rival.cost()) + " % of the match"
                : Numbers.thousandths(-rival.cost()) + " points with the cube";
    }
}
