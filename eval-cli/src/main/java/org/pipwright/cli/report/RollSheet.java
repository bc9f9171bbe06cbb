package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.List;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/** The best play of each roll as a table, with the next best and what it costs. */
public final class RollSheet {
    private static final double THROWS = 36;

    private RollSheet() {}

    /**
     * Prints the table.
     *
     * @param verdicts one for each of the 21 rolls of one position, under the same stakes
     * @param net the net that judged
     * @param out where to
     */
    public static void write(List<Verdict> verdicts, NetLabel net, PrintWriter out) {
        Question question = verdicts.get(0).question();
        boolean match = question.stakes() instanceof MatchStakes;
        Headings.write(question.position(), "to play each of the 21 rolls", out);
        if (question.cubeful()) {
            out.println(CubeWords.stakes(question.stakes()) + "; " + CubeWords.cube(question.cube()));
        }
        out.println("net " + net.name() + ", " + verdicts.get(0).depth());
        out.println();
        Table table = new Table("llrlr");
        table.row("roll", "best play", match ? "match, %" : "equity", "next best", "cost");
        double sum = 0;
        for (Verdict verdict : verdicts) {
            List<PlayVerdict> plays = verdict.plays();
            PlayVerdict best = plays.get(0);
            PlayVerdict next = plays.size() > 1 ? plays.get(1) : null;
            table.row(
                    verdict.question().roll(),
                    best.play(),
                    value(match, best.value()),
                    next == null ? "" : next.play(),
                    next == null ? "" : match ? Numbers.percentCost(next.cost()) : Numbers.cost(next.cost()));
            sum += verdict.question().roll().ways() * best.value();
        }
        table.print(out);
        out.println();
        out.println("mean of the 36 throws: " + value(match, sum / THROWS) + (match ? " %" : ""));
        if (question.cubeful() && !match) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    private static String value(boolean match, double value) {
        return match ? Numbers.finePercent(value) : Numbers.points(value);
    }
}
