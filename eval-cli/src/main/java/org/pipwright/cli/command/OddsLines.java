package org.pipwright.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.cli.batch.Answerer;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;

/** The chances of one position after another, by one thread. */
final class OddsLines implements Answerer {
    private final Judge judge;
    private final NetLabel label;
    private final Effort effort;

    OddsLines(Judge judge, NetLabel label, Effort effort) {
        this.judge = judge;
        this.label = label;
        this.effort = effort;
    }

    @Override
    public void answer(Request request, long line, JsonGenerator json) throws IOException {
        OddsReport.of(judge.ask(Question.before(request.position()), effort), label)
                .write(json, line);
    }

    @Override
    public void close() {
        judge.close();
    }
}
