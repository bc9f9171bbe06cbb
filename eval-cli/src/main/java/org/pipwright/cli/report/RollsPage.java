package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.cli.page.Pages;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.Position;

/**
 * The best play of each roll as a sheet for print: the position and a table, then each play on a board. One HTML file that
 * needs nothing else.
 *
 * @param title what it is about
 * @param position the position in its text form
 * @param stakes what is played for; empty where the cube is left out
 * @param board the position as an SVG element
 * @param unit what values are
 * @param rolls the 21 rolls
 * @param mean what they are worth on average
 * @param origin who judged, with a word of caution where points are played for money
 */
public record RollsPage(
        String title,
        String position,
        String stakes,
        String board,
        String unit,
        List<Reply> rolls,
        String mean,
        String origin) {
    /**
     * A roll and how to play it.
     *
     * @param roll the dice
     * @param best the best play
     * @param value what it is worth
     * @param next the next best play; empty if there is none, as what follows
     * @param cost what it gives away
     * @param grade a word for that
     * @param board the best play as arrows on a board, an SVG element; empty where nothing can be played
     */
    public record Reply(String roll, String best, String value, String next, String cost, String grade, String board) {}

    /**
     * Makes the sheet.
     *
     * @param report the plays
     * @return HTML, to be written in UTF-8
     */
    public static String html(RollsReport report) {
        return Pages.of("rolls.jte", of(report));
    }

    private static RollsPage of(RollsReport report) {
        Question question = report.question();
        String caution = question.stakes() instanceof MoneyStakes ? " " + CubeWords.CAUTION : "";
        return new RollsPage(
                report.before().isEmpty() ? "The 21 rolls" : "Replies to " + report.before(),
                question.position().toString(),
                question.cubeful() ? CubeWords.stakes(question.stakes()) + "; " + CubeWords.cube(question.cube()) : "",
                picture(scene(question)),
                report.unit(),
                replies(report),
                RollsText.mean(report),
                "Judged by " + RollsText.judge(report) + "." + caution);
    }

    private static Scene scene(Question question) {
        Scene scene = Scene.of(question.position());
        if (question.cubeful()) {
            scene = scene.with(question.cube());
        }
        return question.stakes() instanceof MatchStakes match ? scene.with(match.score()) : scene;
    }

    private static List<Reply> replies(RollsReport report) {
        List<Reply> replies = new ArrayList<>();
        for (Verdict verdict : report.verdicts()) {
            PlayVerdict best = RollsReport.best(verdict);
            PlayVerdict next = RollsReport.next(verdict).orElse(null);
            Question question = verdict.question();
            replies.add(new Reply(
                    question.roll().toString(),
                    best.play().toString(),
                    report.value(best.value()),
                    next == null ? "" : next.play().toString(),
                    next == null ? "" : report.cost(next.cost()),
                    next == null ? "" : next.grade().word(),
                    moved(question.position(), best)
                            ? picture(Scene.of(question.position()).with(question.roll(), best.play()))
                            : ""));
        }
        return replies;
    }

    private static boolean moved(Position position, PlayVerdict best) {
        return !best.play().result().equals(position);
    }

    private static String picture(Scene scene) {
        return SvgText.of(BoardPicture.of(scene, Theme.PRINT));
    }
}
