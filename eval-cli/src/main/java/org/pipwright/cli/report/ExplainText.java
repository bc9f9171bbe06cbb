package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.List;
import java.util.function.Function;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.judge.PlayVerdict;

/** An explanation as paragraphs of short sentences. */
final class ExplainText {
    private ExplainText() {}

    /** Prints it; {@code given} says what a rival gives away. */
    static void write(Explanation explanation, Function<PlayVerdict, String> given, PrintWriter out) {
        ExplainedPlay best = explanation.best();
        paragraph("Best: " + best.facts().play(), PlayWords.sentences(best), out);
        for (ExplainedPlay rival : explanation.rivals()) {
            paragraph(heading(rival, given), RivalWords.sentences(best, rival, explanation.gammons()), out);
        }
    }

    private static String heading(ExplainedPlay rival, Function<PlayVerdict, String> given) {
        return rival.facts().play() + " gives away " + given.apply(rival.ranked()) + " ("
                + rival.ranked().grade().word() + ")";
    }

    private static void paragraph(String heading, List<String> sentences, PrintWriter out) {
        out.println();
        out.println(heading);
        sentences.forEach(sentence -> out.println("  " + sentence));
    }
}
