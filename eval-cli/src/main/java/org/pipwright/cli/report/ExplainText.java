package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.List;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;

/** An explanation as paragraphs of short sentences. */
final class ExplainText {
    private ExplainText() {}

    static void write(Explanation explanation, PrintWriter out) {
        ExplainedPlay best = explanation.best();
        paragraph("Best: " + best.facts().play(), PlayWords.sentences(best), out);
        for (ExplainedPlay rival : explanation.rivals()) {
            paragraph(heading(rival), RivalWords.sentences(best, rival), out);
        }
    }

    private static String heading(ExplainedPlay rival) {
        return rival.facts().play() + " gives away "
                + Numbers.thousandths(-rival.ranked().cost()) + " points a game ("
                + rival.ranked().grade().word() + ")";
    }

    private static void paragraph(String heading, List<String> sentences, PrintWriter out) {
        out.println();
        out.println(heading);
        sentences.forEach(sentence -> out.println("  " + sentence));
    }
}
