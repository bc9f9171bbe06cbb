package org.pipwright.cli.drill;

import java.util.List;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.report.AnswerRow;
import org.pipwright.cli.report.DrillWords;
import org.pipwright.cli.report.Html;
import org.pipwright.cli.report.Reasons;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;

/** The parts of an exercise that the sheet and the page have in common. */
final class QuestionHtml {
    private final Exercise question;
    private final Reasons reasons;
    private final String weaker;
    private final Theme theme;

    /**
     * An exercise.
     *
     * @param question the exercise
     * @param reasons why its answer is right
     * @param weaker name of the weaker player
     * @param theme colours of the boards
     */
    QuestionHtml(Exercise question, Reasons reasons, String weaker, Theme theme) {
        this.question = question;
        this.reasons = reasons;
        this.weaker = weaker;
        this.theme = theme;
    }

    /** What is asked, without a board. */
    String prompt() {
        return Markup.element("p class=\"prompt\"", DrillWords.prompt(question))
                + Markup.element("p class=\"stakes\"", DrillWords.stakes(question));
    }

    /** The board of the question. */
    String board() {
        return picture(DrillWords.scene(question));
    }

    /** The board of the question in words. */
    String words() {
        return BoardWords.of(DrillWords.scene(question));
    }

    /** The board with the answer on it; nothing where the answer moves no checkers. */
    String solvedBoard() {
        if (!(question instanceof PlayExercise)) {
            return "";
        }
        PlayExercise plays = (PlayExercise) question;
        return picture(
                Scene.of(plays.position()).with(plays.roll(), plays.best().play()));
    }

    private String picture(Scene scene) {
        Drawing plain = BoardPicture.of(scene, theme);
        Drawing told = new Drawing(plain.width(), plain.height(), plain.paper(), BoardWords.of(scene), plain.shapes());
        return "<div class=\"board\">" + SvgText.of(told) + "</div>\n";
    }

    /** The answer with what the other choices give away. */
    String answer() {
        StringBuilder html = new StringBuilder();
        html.append(Markup.element("p class=\"best\"", DrillWords.best(question)));
        html.append("<table>\n<thead><tr><th scope=\"col\">choice</th>");
        html.append("<th scope=\"col\">").append(Html.escaped(AnswerRow.heading(question)));
        html.append("</th><th scope=\"col\">cost</th><th scope=\"col\">grade</th></tr></thead>\n<tbody>\n");
        for (AnswerRow row : AnswerRow.of(question)) {
            html.append(row.best() ? "<tr class=\"right\">" : "<tr>");
            html.append("<th scope=\"row\">").append(Html.escaped(row.choice()));
            html.append(row.weak() ? " <small>" + Html.escaped(weaker) + "</small>" : "")
                    .append("</th><td>");
            html.append(row.value()).append("</td><td>").append(row.cost()).append("</td><td>");
            html.append(row.grade()).append("</td></tr>\n");
        }
        return html.append("</tbody>\n</table>\n")
                .append(Markup.element("p class=\"remark\"", DrillWords.remark(question)))
                .append(why(DrillWords.whyBest(question), reasons.best()))
                .append(why(DrillWords.whyNot(question), reasons.weak()))
                .toString();
    }

    private static String why(String heading, List<String> sentences) {
        return sentences.isEmpty()
                ? ""
                : "<p class=\"why\"><b>" + Html.escaped(heading) + "</b> " + Html.escaped(String.join(" ", sentences))
                        + "</p>\n";
    }
}
