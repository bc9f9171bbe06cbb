package org.pipwright.cli.drill;

import java.util.List;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillWords;
import org.pipwright.engine.drill.Exercise;

/**
 * Exercises for print: questions on pages of their own, answers after them. One HTML file that needs nothing else. Answers
 * differ in length, so their pages are made by the printer, which divides none of them.
 */
public final class PrintSheet {
    /** Two columns of three; more would not fit a page of A4. */
    private static final int A_PAGE = 6;

    private final DrillReport report;
    private final String title;
    private final StringBuilder html = new StringBuilder();

    private PrintSheet(DrillReport report) {
        this.report = report;
        title = report.settings().theme().title();
    }

    /**
     * Makes the sheet.
     *
     * @param report the exercises
     * @return HTML, to be written in UTF-8
     */
    public static String html(DrillReport report) {
        return new PrintSheet(report).write();
    }

    private String write() {
        html.append(Markup.head(title + ": an exercise sheet", "drill-sheet.css"))
                .append("<body>\n");
        pages("questions", A_PAGE, this::question);
        pages("answers", report.questions().size(), this::answer);
        return html.append("</body>\n</html>\n").toString();
    }

    /** Writes one exercise. */
    @FunctionalInterface
    private interface Part {
        void write(int number, QuestionHtml parts);
    }

    private void pages(String kind, int each, Part part) {
        List<Exercise> questions = report.questions();
        for (int from = 0; from < questions.size(); from += each) {
            html.append("<section class=\"page ").append(kind).append("\">\n");
            heading(kind, from == 0);
            html.append("<div class=\"items\">\n");
            for (int i = from; i < Math.min(from + each, questions.size()); i++) {
                part.write(i + 1, parts(i));
            }
            html.append("</div>\n");
            if (kind.equals("answers") && from + each >= questions.size()) {
                html.append(Markup.element("p class=\"origin\"", report.origin() + " " + DrillWords.caution(report)));
            }
            html.append("</section>\n");
        }
    }

    private void heading(String kind, boolean first) {
        boolean answers = kind.equals("answers");
        html.append("<header>");
        if (first) {
            html.append(Markup.element("h1", answers ? title + ": answers" : title));
        } else {
            html.append(Markup.element("p class=\"again\"", answers ? title + ": answers" : title));
        }
        html.append(
                answers
                        ? Markup.element(
                                "p class=\"seed\"", "seed " + report.settings().seed())
                        : "<p class=\"name\">Name</p>\n");
        html.append("</header>\n");
    }

    private QuestionHtml parts(int i) {
        return new QuestionHtml(
                report.questions().get(i),
                report.reasons().get(i),
                report.weaker().name(),
                Theme.PRINT);
    }

    private void question(int number, QuestionHtml parts) {
        html.append("<article>\n").append(Markup.element("h2", number)).append(parts.prompt());
        html.append(parts.board()).append("<p class=\"line\">Answer</p>\n</article>\n");
    }

    private void answer(int number, QuestionHtml parts) {
        String board = parts.solvedBoard();
        html.append("<article>\n").append(Markup.element("h2", number));
        html.append(board.isEmpty() ? parts.board() : board);
        html.append("<div class=\"answer\">\n");
        html.append(board.isEmpty() ? parts.prompt() : "")
                .append(parts.answer())
                .append("</div>\n</article>\n");
    }
}
