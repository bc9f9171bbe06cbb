package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.ReviewedTurn;

/**
 * The choices of a turn with what they are worth.
 *
 * @param headings of the columns, the choice's first
 * @param rows a row a choice
 * @param verdict what would have been best, in a sentence; may be empty
 */
public record ChoiceTable(List<String> headings, List<Row> rows, String verdict) {
    /**
     * A choice.
     *
     * @param choice what it is
     * @param made whether it was made
     * @param cells a cell for each further column
     */
    public record Row(String choice, boolean made, List<String> cells) {}

    /** The choices about the cube, where anybody thought of it. */
    static Optional<ChoiceTable> ofCube(ReviewReport report, ReviewedTurn turn) {
        boolean thoughtOf = turn.decisions().stream()
                .anyMatch(decision -> decision.kind() != Decision.Kind.PLAY && decision.counted());
        return turn.finding().cube().filter(values -> thoughtOf).map(values -> ofCube(report, turn, values));
    }

    private static ChoiceTable ofCube(ReviewReport report, ReviewedTurn turn, CubeValues values) {
        Moment moment = turn.moment();
        boolean doubled = moment.doubled();
        boolean rolled = !doubled && moment.played().isPresent();
        List<Row> rows = new ArrayList<>();
        rows.add(row(report, "roll", values.noDouble(), values.cost(CubeAction.ROLL), rolled));
        rows.add(row(report, "double", values.doubled(), values.cost(CubeAction.DOUBLE), doubled));
        rows.add(answer(report, moment, values, values.doubleTake(), CubeAction.TAKE));
        rows.add(answer(report, moment, values, values.doublePass(), CubeAction.PASS));
        if (values.mayBeaver()) {
            rows.add(answer(report, moment, values, values.doubleBeaver(), CubeAction.BEAVER));
        }
        return new ChoiceTable(
                List.of("cube", value(report), cost(report, moment)),
                rows,
                "Best: " + verdict(values) + basis(turn.finding().basis()));
    }

    private static Row answer(ReviewReport report, Moment moment, CubeValues values, double value, CubeAction action) {
        return row(
                report,
                "· " + CubeWords.action(action),
                value,
                values.cost(action),
                moment.answer().equals(Optional.of(action)));
    }

    private static Row row(ReviewReport report, String label, double value, double cost, boolean made) {
        return new Row(label, made, List.of(value(report, value), cost(report, cost)));
    }

    /** What the values rest on, if it is more than an estimate. */
    private static String basis(Basis basis) {
        return basis == Basis.ESTIMATED ? "" : " These values are " + basis.title() + ".";
    }

    private static String verdict(CubeValues values) {
        String they = CubeWords.action(values.answer());
        if (values.tooGood()) {
            return "play on, too good to double; if doubled, " + they + ".";
        }
        return (values.shouldDouble() ? "double; the answer is " : "roll; if doubled, the answer is ") + they + ".";
    }

    /** The plays of the roll, where one was made. */
    static Optional<ChoiceTable> ofPlays(ReviewReport report, ReviewedTurn turn) {
        if (turn.moment().played().isEmpty()) {
            return Optional.empty();
        }
        List<PlayVerdict> options = turn.finding().options();
        boolean bases = options.stream().anyMatch(option -> option.basis() != Basis.ESTIMATED);
        List<String> headings = new ArrayList<>(List.of(
                "play",
                value(report),
                cost(report, turn.moment()),
                "wins game, %",
                "gammons won, %",
                "lost, %",
                "depth"));
        if (bases) {
            headings.add("basis");
        }
        List<Row> rows = options.stream()
                .map(option ->
                        new Row(option.play().toString(), ReviewWhy.made(turn, option), cells(report, option, bases)))
                .toList();
        return Optional.of(new ChoiceTable(headings, rows, ""));
    }

    private static List<String> cells(ReviewReport report, PlayVerdict option, boolean bases) {
        Outcomes chances = option.outcomes();
        int games = option.depth().games();
        List<String> cells = new ArrayList<>(List.of(
                value(report, option.value()),
                cost(report, option.cost()),
                Numbers.percent(chances.win()),
                Numbers.percent(chances.winGammon() + chances.winBackgammon()),
                Numbers.percent(chances.loseGammon() + chances.loseBackgammon()),
                games > 0 ? games + " games" : option.depth().lookahead() + " ahead"));
        if (bases) {
            cells.add(option.basis().title());
        }
        return cells;
    }

    private static String value(ReviewReport report) {
        return report.match() ? "wins match, %" : "equity";
    }

    private static String value(ReviewReport report, double value) {
        return report.match() ? Numbers.finePercent(value) : Numbers.points(value);
    }

    /** Equities are those of a single unit of the cube, unlike what a turn cost in the end. */
    private static String cost(ReviewReport report, Moment moment) {
        return report.match() ? "cost, %" : moment.cube().value() > 1 ? "cost a unit of the cube" : "cost";
    }

    private static String cost(ReviewReport report, double cost) {
        return report.match() ? Numbers.percentCost(cost) : Numbers.cost(cost);
    }
}
