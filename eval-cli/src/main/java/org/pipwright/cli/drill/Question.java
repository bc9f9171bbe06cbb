package org.pipwright.cli.drill;

import java.util.List;
import java.util.stream.IntStream;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.picture.View;
import org.pipwright.cli.report.AnswerLines;
import org.pipwright.cli.report.AnswerRow;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillWords;
import org.pipwright.cli.report.Reasons;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;

/**
 * An exercise as pages show it.
 *
 * @param number its number, from 1
 * @param prompt what is asked
 * @param stakes what is played for; may be empty
 * @param board the board as an SVG element
 * @param words the board in words
 * @param roll the roll to be played; empty for decisions about the cube
 * @param choices what can be chosen; empty for plays
 * @param solved the board with the answer on it as an SVG element; empty where it would show nothing new
 * @param answer the answer
 */
public record Question(
        int number,
        String prompt,
        String stakes,
        String board,
        String words,
        String roll,
        List<String> choices,
        String solved,
        Answer answer) {
    /**
     * The answer of an exercise.
     *
     * @param best what is right
     * @param lines the answer in three lines
     * @param heading what the values of the choices are
     * @param rows the choices worth showing
     * @param weaker who made the weaker choice; may be empty
     * @param place where it can be found again; may be empty
     * @param remark more about it; may be empty
     * @param reasons why it is right, and why the weaker choice is not
     */
    public record Answer(
            String best,
            AnswerLines lines,
            String heading,
            List<AnswerRow> rows,
            String weaker,
            String place,
            String remark,
            List<Reason> reasons) {}

    /**
     * Why something is right or wrong.
     *
     * @param heading the question
     * @param sentences the answer
     */
    public record Reason(String heading, String sentences) {}

    static List<Question> all(DrillReport report, Theme theme) {
        return IntStream.range(0, report.questions().size())
                .mapToObj(i ->
                        of(i + 1, report.questions().get(i), report.reasons().get(i), report.view(), theme))
                .toList();
    }

    /**
     * An exercise as pages show it.
     *
     * @param number its number, from 1
     * @param asked the exercise
     * @param reasons why its answer is right
     * @param view how its board is shown
     * @param theme colours of the boards
     * @return what a page shows
     */
    public static Question of(int number, Exercise asked, Reasons reasons, View view, Theme theme) {
        Scene scene = DrillWords.scene(asked);
        boolean play = asked instanceof PlayExercise;
        return new Question(
                number,
                DrillWords.prompt(asked),
                DrillWords.stakes(asked),
                picture(scene, view, theme),
                BoardWords.of(scene, view.pips()),
                play ? ((PlayExercise) asked).roll().toString() : "",
                play ? List.of() : choices((CubeExercise) asked),
                solved(asked, view, theme),
                answer(asked, reasons));
    }

    /** With arrows; where no checkers move, nothing unless the question hides what the answer shows. */
    private static String solved(Exercise asked, View view, Theme theme) {
        if (asked instanceof PlayExercise) {
            return picture(DrillWords.solved((PlayExercise) asked), view.solved(), theme);
        }
        return view.pips() ? "" : picture(DrillWords.scene(asked), view.solved(), theme);
    }

    private static List<String> choices(CubeExercise asked) {
        return asked.choices().stream()
                .map(action -> DrillWords.choice(asked, action))
                .toList();
    }

    private static String picture(Scene scene, View view, Theme theme) {
        Drawing plain = view.of(BoardPicture.of(scene, theme));
        return SvgText.of(new Drawing(
                plain.width(), plain.height(), plain.paper(), BoardWords.of(scene, view.pips()), plain.shapes()));
    }

    private static Answer answer(Exercise asked, Reasons reasons) {
        return new Answer(
                DrillWords.best(asked),
                AnswerLines.of(asked, reasons),
                AnswerRow.heading(asked),
                AnswerRow.of(asked),
                DrillWords.chooser(asked),
                DrillWords.line(asked),
                DrillWords.remark(asked),
                List.of(
                                new Reason(DrillWords.whyBest(asked), String.join(" ", reasons.best())),
                                new Reason(DrillWords.whyNot(asked), String.join(" ", reasons.weak())))
                        .stream()
                        .filter(reason -> !reason.sentences().isEmpty())
                        .toList());
    }
}
