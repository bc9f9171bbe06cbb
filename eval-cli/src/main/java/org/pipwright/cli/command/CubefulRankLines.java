package org.pipwright.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.pipwright.cli.batch.Answerer;
import org.pipwright.cli.batch.Question;
import org.pipwright.cli.report.CubefulRankJson;
import org.pipwright.cli.report.CubefulRankReport;
import org.pipwright.engine.roll.Roll;

/** The plays of one position and roll after another with the cube, by one thread. */
final class CubefulRankLines implements Answerer {
    private final CubefulRankJob job;
    private final Roll usual;
    private final int most;

    /** What all lines are asked alike: {@code usual} is the roll of lines that have none, or null. */
    CubefulRankLines(CubefulRankJob job, Roll usual, int most) {
        this.job = job;
        this.usual = usual;
        this.most = most;
    }

    @Override
    public void answer(Question question, long line, JsonGenerator json) throws IOException {
        Roll roll = RankLines.roll(question, usual);
        CubefulRankReport report =
                job.report(question.position(), roll, List.of(), most, Optional.empty(), shown -> Optional.empty());
        CubefulRankJson.write(report, json, line);
    }

    @Override
    public void close() {
        job.close();
    }
}
