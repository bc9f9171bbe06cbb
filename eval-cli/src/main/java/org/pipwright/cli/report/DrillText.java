package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.List;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.View;
import org.pipwright.engine.drill.Exercise;

/** Exercises as text: the questions first, the answers after all of them. */
public final class DrillText {
    private DrillText() {}

    /**
     * Prints exercises.
     *
     * @param report the exercises
     * @param unicode whether {@code ● ○} can be printed
     * @param out where to
     */
    public static void write(DrillReport report, boolean unicode, PrintWriter out) {
        out.println(report.title() + ": " + report.source().about());
        out.println(report.origin());
        List<Exercise> questions = report.questions();
        for (int i = 0; i < questions.size(); i++) {
            out.println();
            question(i + 1, questions.get(i), report.view(), unicode, out);
        }
        out.println();
        out.println("Answers");
        for (int i = 0; i < questions.size(); i++) {
            out.println();
            answer(i + 1, questions.get(i), report.reasons().get(i), out);
        }
        if (!DrillWords.caution(report).isEmpty()) {
            out.println();
            out.println(DrillWords.caution(report));
        }
    }

    private static void question(int number, Exercise question, View view, boolean unicode, PrintWriter out) {
        out.println(number + ". " + DrillWords.prompt(question));
        Scene scene = DrillWords.scene(question);
        String stakes = DrillWords.stakes(question);
        if (!stakes.isEmpty()) {
            out.println(stakes + "; " + CubeWords.cube(question.cube()));
        }
        out.println();
        if (scene.played()) {
            BoardText.writeWaiting(scene.position(), view, unicode, out);
        } else {
            BoardText.write(scene.position(), view, unicode, out);
        }
    }

    private static void answer(int number, Exercise question, Reasons reasons, PrintWriter out) {
        out.println(number + ". " + DrillWords.best(question));
        AnswerLines.of(question, reasons).all().forEach(line -> out.println("   " + line));
        if (!DrillWords.line(question).isEmpty()) {
            out.println("   " + DrillWords.line(question));
        }
    }
}
