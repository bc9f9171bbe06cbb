package org.pipwright.cli.drill;

import java.util.List;
import org.pipwright.cli.page.Pages;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillWords;

/**
 * Exercises on a page that checks the answers. One HTML file that fetches nothing. Without its script the questions and
 * the answers, folded away, are still there; everything can be reached from the keyboard, and what changes is told to
 * screen readers.
 *
 * @param title what they are about, as a heading
 * @param about the same in a sentence
 * @param plays whether any asks for a play
 * @param home where the home of the side that is asked is: left or right
 * @param questions the exercises
 * @param origin how they were found
 * @param caution a word of caution where points are played for money; may be empty
 * @param data what the script knows, as JSON that can stand inside a script element
 */
public record PracticePage(
        String title,
        String about,
        boolean plays,
        String home,
        List<Question> questions,
        String origin,
        String caution,
        String data) {
    /**
     * Makes the page.
     *
     * @param report the exercises
     * @return HTML, to be written in UTF-8
     */
    public static String html(DrillReport report) {
        List<Question> questions = Question.all(report, Theme.LIGHT);
        return Pages.of(
                "practice.jte",
                new PracticePage(
                        report.title(),
                        "Positions: " + report.source().about() + ".",
                        questions.stream()
                                .anyMatch(question -> question.choices().isEmpty()),
                        report.view().homeLeft() ? "left" : "right",
                        questions,
                        report.origin(),
                        DrillWords.caution(report),
                        PracticeData.json(report)));
    }
}
