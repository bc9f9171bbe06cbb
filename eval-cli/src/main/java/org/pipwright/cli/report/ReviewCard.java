package org.pipwright.cli.report;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.PlayOption;
import org.pipwright.engine.review.ReviewedTurn;

/** One turn on the page: a line that opens to the board, the choices there were, and how they differ. */
final class ReviewCard {
    /** Id of the empty board that all boards of the page share. */
    static final String BOARD = "board";

    private final ReviewReport report;
    private final ReviewedTurn turn;
    private final Moment moment;
    private final StringBuilder html;

    ReviewCard(ReviewReport report, ReviewedTurn turn, StringBuilder html) {
        this.report = report;
        this.turn = turn;
        this.moment = turn.moment();
        this.html = html;
    }

    static String id(ReviewedTurn turn) {
        return "g" + (turn.moment().game() + 1) + "t" + (turn.moment().turn() + 1);
    }

    void write() {
        Grade worst = turn.decisions().stream()
                .filter(Decision::counted)
                .map(Decision::grade)
                .max(Grade::compareTo)
                .orElse(Grade.FINE);
        boolean open = worst.compareTo(Grade.COSTLY) >= 0;
        html.append("<details class='event side")
                .append(moment.onRoll())
                .append("' id=")
                .append(id(turn));
        html.append(open ? " open" : "").append(">\n<summary>");
        summary();
        html.append("</summary>\n<div class=body>\n<div class=boards>\n");
        boards();
        html.append("</div>\n<div class=facts>\n");
        moment.notes()
                .forEach(note -> html.append(Html.element("p class=note", note)).append('\n'));
        turn.finding().cube().ifPresent(this::cube);
        if (moment.played().isPresent()) {
            plays();
        }
        html.append("</div></div></details>\n");
    }

    private void summary() {
        html.append("<span class=no>").append(moment.turn() + 1).append("</span>");
        html.append("<span class=who><i class=disc></i>")
                .append(Html.escaped(report.heading().name(moment.onRoll())))
                .append("</span><span class=did>");
        for (Decision decision : turn.decisions()) {
            if (told(decision)) {
                did(decision);
            }
        }
        moment.resigned()
                .ifPresent(given -> html.append(
                        Html.element("span", report.heading().name(given.side()) + " " + ReviewText.resigns(given))));
        html.append("</span><span class=luck>");
        if (turn.finding().luck().isPresent()) {
            html.append("<small>")
                    .append(report.luckHeading())
                    .append("</small> ")
                    .append(report.total(turn.luckTotal()));
        }
        html.append("</span>");
    }

    /** Rolling without a double is what happens on most turns: it is told of where it cost something. */
    private boolean told(Decision decision) {
        return decision.kind() == Decision.Kind.PLAY || moment.doubled() || decision.grade() != Grade.FINE;
    }

    private void did(Decision decision) {
        String words = ReviewWords.did(turn, decision);
        if (decision.kind() == Decision.Kind.PLAY) {
            words = moment.played().orElseThrow().roll() + ": " + words;
        } else if (decision.side() != moment.onRoll()) {
            words = report.heading().name(decision.side()) + " " + words;
        }
        html.append("<span class=act>").append(Html.escaped(words)).append(' ').append(badge(decision));
        html.append("</span> ");
    }

    static String badge(Decision decision) {
        if (!decision.counted()) {
            return "<b class='grade forced'>forced</b>";
        }
        String word = decision.grade().word();
        return "<b class='grade " + word + "'>" + word
                + (decision.grade() == Grade.FINE ? "" : " -" + Numbers.thousandths(-decision.points())) + "</b>";
    }

    private void boards() {
        boolean better = turn.decisions().stream()
                .anyMatch(decision -> decision.kind() == Decision.Kind.PLAY && decision.grade() != Grade.FINE);
        Play made = moment.played().map(played -> played.play()).orElse(null);
        board(made, made == null ? "" : "played: " + made);
        if (better) {
            Play best = turn.finding().options().get(0).play();
            board(best, "better: " + best);
        }
    }

    private void board(Play play, String caption) {
        Scene scene = new Scene(
                moment.position(),
                play == null ? moment.cube() : moment.rolling(),
                moment.stakes() instanceof MatchStakes ? ((MatchStakes) moment.stakes()).score() : null,
                play == null ? null : moment.played().orElseThrow().roll(),
                play,
                false,
                new TreeSet<>(),
                null);
        Theme theme = moment.onRoll() == 0 ? Theme.LIGHT : Theme.LIGHT.swapped();
        html.append("<figure>").append(SvgText.over(BoardPicture.pieces(scene, theme), BOARD));
        html.append(caption.isEmpty() ? "" : Html.element("figcaption", caption))
                .append("</figure>\n");
    }

    private void cube(CubeValues values) {
        boolean thoughtOf = turn.decisions().stream()
                .anyMatch(decision -> decision.kind() != Decision.Kind.PLAY && decision.counted());
        if (!thoughtOf) {
            return;
        }
        html.append("<table><thead><tr><th>cube</th><th>")
                .append(report.match() ? "wins match, %" : "equity")
                .append("</th><th>cost</th></tr></thead><tbody>\n");
        boolean doubled = moment.doubled();
        cubeRow(
                "roll",
                values.noDouble(),
                values,
                CubeAction.ROLL,
                !doubled && moment.played().isPresent());
        cubeRow("double", values.doubled(), values, CubeAction.DOUBLE, doubled);
        answerRow("· take", values.doubleTake(), values, CubeAction.TAKE);
        answerRow("· pass", values.doublePass(), values, CubeAction.PASS);
        if (values.mayBeaver()) {
            answerRow("· beaver", values.doubleBeaver(), values, CubeAction.BEAVER);
        }
        html.append("</tbody></table>\n<p class=hint>Best: ")
                .append(Html.escaped(verdict(values)))
                .append("</p>\n");
    }

    private void answerRow(String label, double value, CubeValues values, CubeAction action) {
        cubeRow(label, value, values, action, moment.answer().equals(Optional.of(action)));
    }

    private void cubeRow(String label, double value, CubeValues values, CubeAction action, boolean made) {
        html.append(made ? "<tr class=made><td>" : "<tr><td>").append(label).append("</td><td>");
        html.append(report.match() ? Numbers.finePercent(value) : Numbers.points(value))
                .append("</td><td>");
        html.append(cost(values.cost(action))).append("</td></tr>\n");
    }

    private String cost(double cost) {
        return report.match() ? Numbers.percentCost(cost) + " %" : Numbers.cost(cost);
    }

    private static String verdict(CubeValues values) {
        String they = CubeWords.action(values.answer());
        if (values.tooGood()) {
            return "play on, too good to double; if doubled, " + they + ".";
        }
        return (values.shouldDouble() ? "double; the answer is " : "roll; if doubled, the answer is ") + they + ".";
    }

    private void plays() {
        html.append("<table><thead><tr><th>play</th><th>")
                .append(report.match() ? "wins match, %" : "equity")
                .append(
                        "</th><th>cost</th><th>wins game, %</th><th>gammons won, %</th><th>lost, %</th><th>depth</th></tr></thead><tbody>\n");
        double best = turn.finding().options().get(0).value();
        turn.finding().options().forEach(option -> play(option, best));
        html.append("</tbody></table>\n");
        for (Decision decision : turn.decisions()) {
            List<String> why = ReviewWhy.sentences(turn, decision);
            if (!why.isEmpty()) {
                html.append("<p class=why>")
                        .append(Html.escaped(ReviewWords.made(turn) + ": " + String.join(" ", why)));
                html.append("</p>\n");
            }
        }
    }

    private void play(PlayOption option, double best) {
        html.append(ReviewWhy.made(turn, option) ? "<tr class=made><td>" : "<tr><td>");
        html.append(Html.escaped(option.play())).append("</td><td>");
        html.append(report.match() ? Numbers.finePercent(option.value()) : Numbers.points(option.value()));
        html.append("</td><td>");
        html.append(cost(Math.min(0, option.value() - best))).append("</td>");
        percent(option.outcomes().win());
        percent(option.outcomes().winGammon() + option.outcomes().winBackgammon());
        percent(option.outcomes().loseGammon() + option.outcomes().loseBackgammon());
        int games = option.depth().games();
        html.append("<td>").append(games > 0 ? games + " games" : option.depth().lookahead() + " ahead");
        html.append("</td></tr>\n");
    }

    private void percent(double chance) {
        html.append("<td>").append(Numbers.percent(chance)).append("</td>");
    }
}
