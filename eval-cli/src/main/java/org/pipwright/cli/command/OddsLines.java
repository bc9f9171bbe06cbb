package org.pipwright.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.cli.batch.Lines;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/**
 * The chances of one position after another.
 *
 * @param label the net
 */
record OddsLines(NetLabel label) implements Lines {
    @Override
    public Question question(Request request) {
        return Question.before(request.position());
    }

    @Override
    public void write(Verdict verdict, long line, JsonGenerator json) throws IOException {
        OddsReport.of(verdict, label).write(json, line);
    }
}
