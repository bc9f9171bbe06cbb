package org.pipwright.cli.report;

import java.util.List;
import java.util.Locale;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;

/**
 * The answer of an exercise in three short lines.
 *
 * @param point what decides here
 * @param figures what the choices are worth
 * @param lesson what to keep for other positions
 */
public record AnswerLines(String point, String figures, String lesson) {
    /**
     * The lines of an exercise.
     *
     * @param question the exercise
     * @param reasons why its answer is right
     * @return the lines
     */
    public static AnswerLines of(Exercise question, Reasons reasons) {
        return new AnswerLines(point(question, reasons), figures(question), reasons.lesson());
    }

    private static String point(Exercise question, Reasons reasons) {
        if (question instanceof PlayExercise) {
            return reasons.weak().isEmpty()
                    ? reasons.best().get(0)
                    : DrillWords.whyNot(question) + " " + reasons.weak().get(0);
        }
        return (DrillWords.remark(question) + " " + reasons.best().get(0)).strip();
    }

    private static String figures(Exercise question) {
        List<AnswerRow> rows = AnswerRow.of(question);
        String worth = question instanceof CubeExercise
                ? rows.get(0).choice() + " " + rows.get(0).value() + ", "
                        + rows.get(1).choice().toLowerCase(Locale.ROOT) + " "
                        + rows.get(1).value() + " (" + AnswerRow.heading(question) + ")."
                : rows.get(0).choice() + " " + rows.get(0).value() + " (" + AnswerRow.heading(question) + ").";
        boolean third = question instanceof PlayExercise && !rows.get(1).weak();
        return worth + " " + DrillWords.mistake(question)
                + (third
                        ? " The second best, " + rows.get(1).choice() + ", gives away "
                                + GivenAway.by(
                                        question,
                                        ((PlayExercise) question).ranking().get(1)) + "."
                        : "");
    }

    /**
     * All three.
     *
     * @return the lines in their order
     */
    public List<String> all() {
        return List.of(point, figures, lesson);
    }
}
