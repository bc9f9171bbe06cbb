package org.pipwright.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.function.UnaryOperator;
import org.pipwright.cli.batch.Answerer;
import org.pipwright.cli.batch.Request;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.RankReport;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.roll.Roll;

/** The plays of one position and roll after another, by one thread. */
final class RankLines implements Answerer {
    private final Judge judge;
    private final NetLabel label;
    private final Effort effort;
    private final UnaryOperator<Question> stakes;
    private final Roll usual;
    private final int most;

    /**
     * What all lines are asked alike: {@code stakes} says what is played for, {@code usual} is the roll of lines that have
     * none, or null.
     */
    RankLines(Judge judge, NetLabel label, Effort effort, UnaryOperator<Question> stakes, Roll usual, int most) {
        this.judge = judge;
        this.label = label;
        this.effort = effort;
        this.stakes = stakes;
        this.usual = usual;
        this.most = most;
    }

    /** The roll that a line asks about; fails if there is none, or nothing to play with it. */
    private Roll roll(Request request) {
        Roll roll = request.roll() == null ? usual : request.roll();
        if (roll == null) {
            throw new UserError("no roll given: put it after the position, as in 'start 3-1', or give --roll");
        }
        if (request.position().finished()) {
            throw new UserError("the game is over in this position: there is no roll to play");
        }
        return roll;
    }

    @Override
    public void answer(Request request, long line, JsonGenerator json) throws IOException {
        Question question = stakes.apply(Question.of(request.position(), roll(request)));
        RankJson.write(RankReport.of(judge.ask(question, effort), List.of(), label, most), json, line);
    }

    @Override
    public void close() {
        judge.close();
    }
}
