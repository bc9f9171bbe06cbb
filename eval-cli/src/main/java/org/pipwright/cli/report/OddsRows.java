package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Verdict;

/** Chances as rows, a position in each. */
public final class OddsRows implements Rows {
    private static final List<Column<Row>> CSV = Column.join(
            Column.join(
                    List.of(
                            Column.of("line", Row::number),
                            Column.of("position", row -> row.verdict.question().position()),
                            Column.of("equity", row -> Numbers.millionths(row.verdict.value())),
                            Column.of(
                                    "win",
                                    row -> Numbers.millionths(row.chances().win())),
                            Column.of("basis", row -> row.verdict.basis().title()),
                            Column.of("lookahead", row -> row.verdict.depth().lookahead()),
                            Column.of("games", row -> row.verdict.depth().games()),
                            Column.of(
                                    "standardError",
                                    row -> Numbers.millionths(
                                            row.verdict.depth().error()))),
                    Column.chances(Row::chances)),
            List.of(Column.of("error", row -> "")));

    private static final List<Column<Row>> TABLE = List.of(
            new Column<>("line", -5, Row::number),
            new Column<>("equity", -7, row -> Numbers.points(row.verdict.value())),
            new Column<>("win, %", -6, row -> Numbers.percent(row.chances().win())),
            new Column<>("gammon", -6, row -> Numbers.percent(row.chances().winGammon())),
            new Column<>("backg.", -6, row -> Numbers.percent(row.chances().winBackgammon())),
            new Column<>(
                    "lose, %",
                    -7, row -> Numbers.percent(row.chances().swapped().win())),
            new Column<>("gammon", -6, row -> Numbers.percent(row.chances().loseGammon())),
            new Column<>("backg.", -6, row -> Numbers.percent(row.chances().loseBackgammon())),
            new Column<>("basis", 18, row -> row.verdict.basis().title()),
            new Column<>("position", 0, row -> row.verdict.question().position()));

    private final RowForm<Row> form;

    /** A position. */
    private record Row(long line, Verdict verdict) {
        String number() {
            return line == 0 ? "" : String.valueOf(line);
        }

        Outcomes chances() {
            return verdict.outcomes();
        }
    }

    private OddsRows(RowForm<Row> form) {
        this.form = form;
    }

    /**
     * Chances as CSV.
     *
     * @return the form
     */
    public static OddsRows csv() {
        return new OddsRows(RowForm.csv(CSV));
    }

    /**
     * Chances as a table, in per cent; to win and to lose at all, then how much of that is gammons and backgammons.
     *
     * @return the form
     */
    public static OddsRows table() {
        return new OddsRows(RowForm.table(TABLE));
    }

    @Override
    public String head() {
        return form.head();
    }

    @Override
    public String of(Verdict verdict, long line) {
        return form.row(new Row(line, verdict));
    }

    @Override
    public String error(String error, long line) {
        return form.error(error, line);
    }
}
