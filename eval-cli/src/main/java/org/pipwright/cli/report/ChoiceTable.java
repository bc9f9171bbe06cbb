package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.PlayOption;
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
        return turn.finding().cube().filter(values -> thoughtOf).map(values -> ofCube(report, turn.moment(), values));
    }

    private static ChoiceTable ofCube(ReviewReport report, Moment moment, CubeValues values) {
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
        return new ChoiceTable(List.of("cube", value(report), cost(report, moment)), rows, "Best: " + verdict(values));
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
        double best = turn.finding().options().get(0).value();
        List<Row> rows = turn.finding().options().stream()
                .map(option -> play(report, option, best, ReviewWhy.made(turn, option)))
                .toList();
        return Optional.of(new ChoiceTable(
                List.of(
                        "play",
                        value(report),
                        cost(report, turn.moment()),
                        "wins game, %",
                        "gammons won, %",
                        "lost, %",
                        "depth"),
                rows,
                ""));
    }

    private static Row play(ReviewReport report, PlayOption option, double best, boolean made) {
        int games = option.depth().games();
        return new Row(
                option.play().toString(),
                made,
                List.of(
                        value(report, option.value()),
                        cost(report, Math.min(0, option.value() - best)),
                        Numbers.percent(option.outcomes().win()),
                        Numbers.percent(option.outcomes().winGammon()
                                + option.outcomes().winBackgammon()),
                        Numbers.percent(option.outcomes().loseGammon()
                                + option.outcomes().loseBackgammon()),
                        games > 0 ? games + " games" : option.depth().lookahead() + " ahead"));
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
