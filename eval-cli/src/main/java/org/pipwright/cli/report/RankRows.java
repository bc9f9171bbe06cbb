package org.pipwright.cli.report;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.ranking.Listing;

/** Rankings as rows, a play in each. */
public final class RankRows implements Rows {
    private static final List<Column<Row>> CSV = Column.join(
            Column.join(
                    List.of(
                            Column.of("line", Row::number),
                            Column.of("position", row -> row.question.position()),
                            Column.of("roll", row -> row.question.roll()),
                            Column.of("place", row -> row.place),
                            Column.of("play", row -> row.play.play()),
                            Column.of("unit", Row::unit),
                            Column.of("value", row -> Numbers.millionths(row.play.value())),
                            Column.of("cost", row -> Numbers.millionths(row.play.cost())),
                            Column.of("grade", row -> row.play.grade().word()),
                            Column.of("equity", row -> Numbers.millionths(row.play.equity())),
                            Column.of("basis", row -> row.play.basis().title()),
                            Column.of("lookahead", row -> row.play.depth().lookahead()),
                            Column.of("games", row -> row.play.depth().games()),
                            Column.of(
                                    "standardError",
                                    row -> Numbers.millionths(row.play.depth().error()))),
                    Column.chances(row -> row.play.outcomes())),
            List.of(Column.of("error", row -> "")));

    private static final List<Column<Row>> TABLE = List.of(
            new Column<>("line", -5, Row::number),
            new Column<>("roll", 4, row -> row.place == 1 ? row.question.roll() : ""),
            new Column<>("", -2, row -> row.place),
            new Column<>("play", 22, row -> row.play.play()),
            new Column<>("value", -7, Row::value),
            new Column<>("cost", -7, Row::cost),
            new Column<>("grade", 6, row -> row.play.grade().word()),
            new Column<>(
                    "win, %", -6, row -> Numbers.percent(row.play.outcomes().win())),
            new Column<>("position", 0, row -> row.place == 1 ? row.question.position() : ""));

    private final RowForm<Row> form;
    private final int most;

    /** A play. */
    private record Row(long line, Question question, int place, PlayVerdict play) {
        String number() {
            return line == 0 ? "" : String.valueOf(line);
        }

        boolean match() {
            return question.stakes() instanceof MatchStakes;
        }

        String unit() {
            return match() ? "match" : question.cubeful() ? "cube" : "points";
        }

        String value() {
            return match() ? Numbers.finePercent(play.value()) + "%" : Numbers.points(play.value());
        }

        String cost() {
            return match() ? Numbers.percentCost(play.cost()) + "%" : Numbers.cost(play.cost());
        }
    }

    private RankRows(RowForm<Row> form, int most) {
        this.form = form;
        this.most = most;
    }

    /**
     * Rankings as CSV. Values and costs are in points a game ({@code points}), points per unit of the cube ({@code cube})
     * or chances to win the match ({@code match}); the equity leaves the cube out.
     *
     * @param most plays of each to show at most, at least 1
     * @return the form
     */
    public static RankRows csv(int most) {
        return new RankRows(RowForm.csv(CSV), most);
    }

    /**
     * Rankings as a table; roll and position stand beside the best play.
     *
     * @param most plays of each to show at most, at least 1
     * @return the form
     */
    public static RankRows table(int most) {
        return new RankRows(RowForm.table(TABLE), most);
    }

    @Override
    public String head() {
        return form.head();
    }

    @Override
    public String of(Verdict verdict, long line) {
        return of(verdict.question(), Listing.byValue(verdict.plays(), most, PlayVerdict::value), line);
    }

    /**
     * The rows of some plays.
     *
     * @param question what was asked
     * @param plays the plays, best first
     * @param line number of the line of input, from 1; 0 if there is none
     * @return whole lines
     */
    public String of(Question question, List<PlayVerdict> plays, long line) {
        return IntStream.range(0, plays.size())
                .mapToObj(i -> form.row(new Row(line, question, i + 1, plays.get(i))))
                .collect(Collectors.joining());
    }

    @Override
    public String error(String error, long line) {
        return form.error(error, line);
    }
}
