package org.pipwright.cli.drill;

import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillWords;
import org.pipwright.cli.report.Reasons;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;

/**
 * Exercises on a page that checks the answers. One HTML file that fetches nothing. Without its script the questions and
 * the answers, folded away, are still there; everything can be reached from the keyboard, and what changes is told to
 * screen readers.
 */
public final class PracticePage {
    private final DrillReport report;
    private final StringBuilder html = new StringBuilder();

    private PracticePage(DrillReport report) {
        this.report = report;
    }

    /**
     * Makes the page.
     *
     * @param report the exercises
     * @return HTML, to be written in UTF-8
     */
    public static String html(DrillReport report) {
        return new PracticePage(report).write();
    }

    private String write() {
        String title = report.settings().theme().title();
        html.append(Markup.head(title + ": exercises", "drill-page.css")).append("<body>\n<header>\n");
        html.append(Markup.element("h1", title));
        html.append(Markup.element(
                "p", "Positions about " + report.settings().theme().about() + "."));
        html.append(
                "<p id=\"unscripted\">Think of your answer, then unfold the right one below each position.</p>\n</header>\n<p id=\"tally\" role=\"status\" hidden></p>\n<main>\n");
        hint();
        for (int i = 0; i < report.questions().size(); i++) {
            question(i + 1, report.questions().get(i), report.reasons().get(i));
        }
        html.append("</main>\n<footer>\n");
        html.append(Markup.element("p", report.origin()));
        html.append(Markup.element("p", DrillWords.caution(report)));
        html.append("</footer>\n<script type=\"application/json\" id=\"drill\">");
        html.append(PracticeData.json(report)).append("</script>\n<script>\n");
        return html.append(Markup.resource("drill-page.js"))
                .append("</script>\n</body>\n</html>\n")
                .toString();
    }

    private void hint() {
        if (report.questions().stream().anyMatch(question -> question instanceof PlayExercise)) {
            html.append(
                    "<p id=\"notation\" class=\"scripted\" hidden>Write a play like 8/5 6/5, 13/7*, bar/22 or 6/off(2)."
                            + " Points are numbered from your home, which is at the lower right. You are dark.</p>\n");
        } else {
            html.append("<p class=\"scripted\" hidden>Your home is at the lower right. You are dark.</p>\n");
        }
    }

    private void question(int number, Exercise question, Reasons reasons) {
        QuestionHtml parts = new QuestionHtml(question, reasons, report.weaker().name(), Theme.LIGHT);
        int all = report.questions().size();
        html.append("<section id=\"q")
                .append(number)
                .append("\" aria-labelledby=\"h")
                .append(number)
                .append("\">\n");
        html.append("<h2 id=\"h").append(number).append("\" tabindex=\"-1\">");
        html.append("Position ").append(number).append(" of ").append(all).append("</h2>\n");
        html.append(parts.prompt()).append(parts.board());
        html.append("<details class=\"words\"><summary>Board ").append(number).append(" in words</summary>");
        html.append(Markup.element("p", parts.words())).append("</details>\n");
        form(number, question);
        html.append("<details class=\"solution\"><summary>Answer ")
                .append(number)
                .append("</summary>\n");
        html.append(parts.solvedBoard()).append("<div class=\"answer\">\n").append(parts.answer());
        html.append("</div></details>\n");
        if (number < all) {
            html.append("<p class=\"next\"><a href=\"#h").append(number + 1).append("\">Next position</a></p>\n");
        }
        html.append("</section>\n");
    }

    private void form(int number, Exercise question) {
        html.append("<form class=\"scripted\" hidden>\n");
        if (question instanceof PlayExercise) {
            html.append("<label for=\"a").append(number).append("\">Your play of ");
            html.append(((PlayExercise) question).roll()).append("</label>\n<div class=\"row\">");
            html.append("<input id=\"a").append(number).append("\" type=\"text\" autocomplete=\"off\"");
            html.append(" autocapitalize=\"none\" spellcheck=\"false\" maxlength=\"200\"");
            html.append(" aria-describedby=\"notation f").append(number).append("\">");
            html.append("<button type=\"submit\">Check</button></div>\n");
        } else {
            html.append("<div class=\"row\" role=\"group\" aria-labelledby=\"h")
                    .append(number)
                    .append("\">");
            for (CubeAction action : ((CubeExercise) question).choices()) {
                String choice = DrillWords.choice((CubeExercise) question, action);
                html.append("<button type=\"submit\" value=\"")
                        .append(choice)
                        .append("\">")
                        .append(choice);
                html.append("</button>");
            }
            html.append("</div>\n");
        }
        html.append("<p id=\"f").append(number).append("\" class=\"feedback\" role=\"status\"></p>\n</form>\n");
    }
}
