package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.cli.command.FormatOption.Format;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankRows;
import org.pipwright.cli.report.RollsJson;
import org.pipwright.cli.report.RollsPage;
import org.pipwright.cli.report.RollsReport;
import org.pipwright.cli.report.RollsText;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The best play of each of the 21 rolls: asked for, printed, and written as a sheet. */
final class AllRolls {
    @Option(
            names = "--sheet",
            paramLabel = "FILE.html",
            converter = OutputFile.Html.class,
            description = "With --roll all: write a sheet for print too, the table and each best play on a board.")
    private Path sheet;

    @Mixin
    private ForceOption force;

    boolean sheetWanted() {
        return sheet != null;
    }

    /** Refuses an option that is for one roll. */
    static void refuse(boolean given, String option) {
        if (given) {
            throw new UserError(option + " is for one roll: leave it out with --roll all");
        }
    }

    /** The questions: what each roll is asked, in the order of rolls. */
    static List<Verdict> ask(Position position, Judge judge, CubeOptions stakes, Effort effort) {
        return Roll.all().stream()
                .map(roll -> judge.ask(stakes.about(Question.of(position, roll)), effort))
                .collect(Collectors.toList());
    }

    /** Prints the answers, and writes the sheet if one is wanted. */
    void write(List<Verdict> verdicts, NetLabel net, String before, Format format, PrintWriter out, PrintWriter err) {
        RollsReport report = new RollsReport(verdicts, net, before);
        if (sheet != null) {
            OutputFile.write(sheet, RollsPage.html(report).getBytes(StandardCharsets.UTF_8));
            err.println("wrote " + sheet);
        }
        switch (format) {
            case JSON:
                RollsJson.write(report, out);
                break;
            case CSV:
                RankRows rows = RankRows.csv(Integer.MAX_VALUE);
                out.print(rows.head());
                verdicts.forEach(each -> out.print(rows.of(each.question(), RollsReport.shown(each), 0)));
                break;
            default:
                RollsText.write(report, out);
        }
    }
}
