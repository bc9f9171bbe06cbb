package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.List;
import org.pipwright.cli.picture.Scene;
import org.pipwright.engine.drill.CubeQuestion;
import org.pipwright.engine.drill.PlayQuestion;
import org.pipwright.engine.drill.Question;
import org.pipwright.engine.ranking.RankedPlay;

/** Exercises as text: the questions first, the answers after all of them. */
public final class DrillText {
    private static final int SHOWN = 3;

    private DrillText() {}

    /**
     * Prints exercises.
     *
     * @param report the exercises
     * @param unicode whether {@code ● ○} can be printed
     * @param out where to
     */
    public static void write(DrillReport report, boolean unicode, PrintWriter out) {
        out.println(report.settings().theme().title() + ": "
                + report.settings().theme().about());
        out.println(report.origin());
        List<Question> questions = report.questions();
        for (int i = 0; i < questions.size(); i++) {
            out.println();
            question(i + 1, questions.get(i), unicode, out);
        }
        out.println();
        out.println("Answers");
        for (int i = 0; i < questions.size(); i++) {
            out.println();
            answer(i + 1, questions.get(i), report.weaker().name(), out);
        }
    }

    private static void question(int number, Question question, boolean unicode, PrintWriter out) {
        out.println(number + ". " + DrillWords.prompt(question));
        Scene scene = DrillWords.scene(question);
        String stakes = DrillWords.stakes(question);
        if (!stakes.isEmpty()) {
            out.println(stakes + "; " + CubeWords.cube(((CubeQuestion) question).cube()));
        }
        out.println();
        if (scene.played()) {
            BoardText.writeWaiting(scene.position(), unicode, out);
        } else {
            BoardText.write(scene.position(), unicode, out);
        }
    }

    private static void answer(int number, Question question, String weaker, PrintWriter out) {
        out.println(number + ". " + DrillWords.best(question));
        if (question instanceof CubeQuestion) {
            out.println("   " + DrillWords.reason((CubeQuestion) question));
        } else {
            plays((PlayQuestion) question, out);
        }
        out.println("   " + DrillWords.mistake(question, weaker));
    }

    private static void plays(PlayQuestion question, PrintWriter out) {
        Table table = new Table("llrrl");
        table.row("", "play", "equity", "cost", "grade");
        for (RankedPlay ranked : shown(question)) {
            table.row(
                    " ",
                    ranked.play(),
                    Numbers.points(ranked.equity()),
                    Numbers.cost(ranked.cost()),
                    ranked.grade().word());
        }
        table.print(out);
    }

    private static List<RankedPlay> shown(PlayQuestion question) {
        return question.ranking().subList(0, Math.min(SHOWN, question.ranking().size()));
    }
}
