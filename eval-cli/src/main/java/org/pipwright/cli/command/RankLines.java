package org.pipwright.cli.command;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.function.UnaryOperator;
import org.pipwright.cli.batch.JsonSheet;
import org.pipwright.cli.batch.Lines;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.batch.RowSheet;
import org.pipwright.cli.batch.Sheet;
import org.pipwright.cli.command.FormatOption.Format;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.RankReport;
import org.pipwright.cli.report.RankRows;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.roll.Roll;

/**
 * The plays of one position and roll after another.
 *
 * @param label the net
 * @param stakes says what is played for
 * @param usual the roll of lines that have none, or null
 * @param most plays to list
 * @param format how
 */
record RankLines(NetLabel label, UnaryOperator<Question> stakes, Roll usual, int most, Format format) implements Lines {
    /** Fails if there is no roll, or nothing to play with it. */
    @Override
    public Question question(Request request) {
        Roll roll = request.roll() == null ? usual : request.roll();
        if (roll == null) {
            throw new UserError("no roll given: put it after the position, as in 'start 3-1', or give --roll");
        }
        if (request.position().finished()) {
            throw new UserError("the game is over in this position: there is no roll to play");
        }
        return stakes.apply(Question.of(request.position(), roll));
    }

    @Override
    public String head() {
        return format == Format.JSON ? "" : rows().head();
    }

    @Override
    public Sheet sheet(Writer to) throws IOException {
        return format == Format.JSON
                ? new JsonSheet(
                        to,
                        (verdict, line, json) ->
                                RankJson.write(RankReport.of(verdict, List.of(), label, most), json, line))
                : new RowSheet(to, rows());
    }

    private RankRows rows() {
        return format == Format.CSV ? RankRows.csv(most) : RankRows.table(most);
    }
}
