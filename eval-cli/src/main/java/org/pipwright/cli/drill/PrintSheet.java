package org.pipwright.cli.drill;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.cli.page.Pages;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillWords;

/**
 * Exercises for print: questions on pages of their own, answers after them. One HTML file that needs nothing else. Answers
 * differ in length, so their pages are made by the printer, which divides none of them.
 *
 * @param title what they are about
 * @param pages the questions, page by page
 * @param answers the same, for the answers
 * @param mark tells this sheet from others, such as by its seed; may be empty
 * @param origin how they were found, with a word of caution where points are played for money
 */
public record PrintSheet(String title, List<List<Question>> pages, List<Question> answers, String mark, String origin) {
    /** Two columns of three; more would not fit a page of A4. */
    private static final int A_PAGE = 6;

    /**
     * Makes the sheet.
     *
     * @param report the exercises
     * @return HTML, to be written in UTF-8
     */
    public static String html(DrillReport report) {
        List<Question> questions = Question.all(report, Theme.PRINT);
        List<List<Question>> pages = new ArrayList<>();
        for (int from = 0; from < questions.size(); from += A_PAGE) {
            pages.add(questions.subList(from, Math.min(from + A_PAGE, questions.size())));
        }
        return Pages.of(
                "sheet.jte",
                new PrintSheet(
                        report.title(),
                        pages,
                        questions,
                        report.source().mark(),
                        (report.origin() + " " + DrillWords.caution(report)).strip()));
    }
}
