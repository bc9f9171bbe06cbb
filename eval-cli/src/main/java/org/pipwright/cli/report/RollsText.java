package org.pipwright.cli.report;

import java.io.PrintWriter;
import java.util.Optional;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/** The best play of each roll as a table, with the next best and what it costs. */
public final class RollsText {
    private RollsText() {}

    /**
     * Prints the table.
     *
     * @param report the plays
     * @param out where to
     */
    public static void write(RollsReport report, PrintWriter out) {
        Question question = report.question();
        Headings.write(question.position(), "to play each of the 21 rolls", out);
        if (question.cubeful()) {
            out.println(CubeWords.stakes(question.stakes()) + "; " + CubeWords.cube(question.cube()));
        }
        out.println(judge(report));
        out.println();
        Table table = new Table("llrlr");
        table.row("roll", "best play", report.unit(), "next best", "cost");
        for (Verdict verdict : report.verdicts()) {
            PlayVerdict best = RollsReport.best(verdict);
            Optional<PlayVerdict> next = RollsReport.next(verdict);
            table.row(
                    verdict.question().roll(),
                    best.play(),
                    report.value(best.value()),
                    next.map(play -> play.play().toString()).orElse(""),
                    next.map(play -> report.cost(play.cost())).orElse(""));
        }
        table.print(out);
        out.println();
        out.println(mean(report));
        if (question.stakes() instanceof MoneyStakes) {
            out.println();
            out.println(CubeWords.CAUTION);
        }
    }

    static String judge(RollsReport report) {
        return "net " + report.net().name() + ", " + report.verdicts().get(0).depth();
    }

    static String mean(RollsReport report) {
        return "mean of the 36 throws: " + report.value(report.mean()) + (report.match() ? " %" : "");
    }
}
