package org.pipwright.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.function.UnaryOperator;
import org.pipwright.cli.batch.Lines;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.RankReport;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.roll.Roll;

/**
 * The plays of one position and roll after another.
 *
 * @param label the net
 * @param stakes says what is played for
 * @param usual the roll of lines that have none, or null
 * @param most plays to list
 */
record RankLines(NetLabel label, UnaryOperator<Question> stakes, Roll usual, int most) implements Lines {
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
    public void write(Verdict verdict, long line, JsonGenerator json) throws IOException {
        RankJson.write(RankReport.of(verdict, List.of(), label, most), json, line);
    }
}
