package org.pipwright.cli.command;

import java.io.IOException;
import java.io.Writer;
import org.pipwright.cli.batch.JsonSheet;
import org.pipwright.cli.batch.Lines;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.batch.RowSheet;
import org.pipwright.cli.batch.Sheet;
import org.pipwright.cli.command.FormatOption.Format;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.cli.report.OddsRows;
import org.pipwright.engine.judge.Question;

/**
 * The chances of one position after another.
 *
 * @param label the net
 * @param format how they are written
 */
record OddsLines(NetLabel label, Format format) implements Lines {
    @Override
    public Question question(Request request) {
        return Question.before(request.position());
    }

    @Override
    public String head() {
        return format == Format.JSON ? "" : rows().head();
    }

    @Override
    public Sheet sheet(Writer to) throws IOException {
        return format == Format.JSON
                ? new JsonSheet(to, (verdict, line, json) -> OddsReport.of(verdict, label)
                        .write(json, line))
                : new RowSheet(to, rows());
    }

    private OddsRows rows() {
        return format == Format.CSV ? OddsRows.csv() : OddsRows.table();
    }
}
