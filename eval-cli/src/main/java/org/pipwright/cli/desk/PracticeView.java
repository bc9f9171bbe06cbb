package org.pipwright.cli.desk;

import java.util.List;
import java.util.Optional;
import org.pipwright.cli.drill.Question;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.picture.View;
import org.pipwright.engine.drill.PlayExercise;

/**
 * An exercise that is asked, as a page shows it.
 *
 * @param number number of the practice
 * @param title what it is about
 * @param tally what was right and wrong so far
 * @param question the exercise; empty while it is looked for, or if there are no more
 * @param plays legal plays to choose from, in no order that tells anything
 * @param again whether it was answered wrongly before
 * @param feedback what the answer was worth; empty before it was given
 * @param right whether the answer was right
 * @param error why what was written is no answer; may be empty
 * @param over whether there are no more
 * @param said what has changed, for those who hear it
 */
public record PracticeView(
        int number,
        String title,
        String tally,
        Optional<Question> question,
        List<String> plays,
        boolean again,
        String feedback,
        boolean right,
        String error,
        boolean over,
        String said) {
    static PracticeView of(int number, Practice practice, String error) {
        Practice.Standing standing = practice.standing();
        Optional<Question> question = standing.asked()
                .map(asked ->
                        Question.of(standing.number(), asked.exercise(), asked.reasons(), View.USUAL, Theme.LIGHT));
        String feedback = standing.answered().map(PracticeView::feedback).orElse("");
        return new PracticeView(
                number,
                practice.title(),
                tally(standing),
                question,
                standing.asked()
                        .filter(asked -> asked.exercise() instanceof PlayExercise)
                        .map(asked -> ((PlayExercise) asked.exercise())
                                .ranking().stream()
                                        .map(verdict -> verdict.play().toString())
                                        .sorted()
                                        .toList())
                        .orElse(List.of()),
                standing.asked().map(asked -> asked.before() > 0).orElse(false),
                feedback,
                standing.answered().map(Practice.Answered::right).orElse(false),
                error,
                standing.over(),
                said(standing, question, feedback, error));
    }

    private static String feedback(Practice.Answered answered) {
        String gives = answered.given() + ": " + answered.grade().word();
        if (answered.right()) {
            return answered.cost() == 0
                    ? "Right: " + answered.words() + "."
                    : "Right: " + answered.words() + " gives away " + gives + ".";
        }
        return answered.words() + " gives away " + gives + ". It will be asked again.";
    }

    private static String tally(Practice.Standing standing) {
        return standing.right() + " right, " + standing.wrong() + " wrong"
                + (standing.waiting() == 0 ? "" : ", " + standing.waiting() + " to be asked again");
    }

    private static String said(Practice.Standing standing, Optional<Question> question, String feedback, String error) {
        if (!error.isEmpty()) {
            return error;
        }
        if (!feedback.isEmpty()) {
            return feedback;
        }
        return question.map(asked -> "Position " + asked.number() + ": " + asked.prompt())
                .orElse(standing.over() ? "That was all: " + tally(standing) + "." : "Looking for a position …");
    }
}
