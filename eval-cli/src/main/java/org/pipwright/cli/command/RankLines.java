package org.pipwright.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.pipwright.cli.batch.Answerer;
import org.pipwright.cli.batch.Question;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.RankReport;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Listing;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;

/** The plays of one position and roll after another, by one thread. */
final class RankLines implements Answerer {
    private final NetLabel label;
    private final EndgameTables tables;
    private final int lookahead;
    private final boolean simulate;
    private final Roll usual;
    private final int most;
    private final PlaySearch search;

    /** What all lines are asked alike: {@code usual} is the roll of lines that have none, or null. */
    RankLines(
            Model model, NetLabel label, EndgameTables tables, int lookahead, boolean simulate, Roll usual, int most) {
        this.label = label;
        this.tables = tables;
        this.lookahead = lookahead;
        this.simulate = simulate;
        this.usual = usual;
        this.most = most;
        search = new PlaySearch(Judges.of(model, tables), LookaheadSettings.DEFAULT, 1);
    }

    /** The roll that a line asks about; fails if there is none, or nothing to play with it. */
    static Roll roll(Question question, Roll usual) {
        Roll roll = question.roll() == null ? usual : question.roll();
        if (roll == null) {
            throw new UserError("no roll: write it behind the position, as in 'start 3-1', or give --roll");
        }
        if (question.position().finished()) {
            throw new UserError("the game is over in this position: there is no roll to play");
        }
        return roll;
    }

    @Override
    public void answer(Question question, long line, JsonGenerator json) throws IOException {
        Position position = question.position();
        Roll roll = roll(question, usual);
        List<RankedPlay> ranking = search.rank(position, roll, lookahead);
        if (simulate) {
            ranking = RaceSimulation.refined(ranking, tables, 1);
        }
        int count = ranking.size();
        List<RankedPlay> shown = Listing.byValue(ranking, most, RankedPlay::equity);
        RankJson.write(
                new RankReport(position, roll, label, count, count, shown, simulate, Optional.empty()), json, line);
    }

    @Override
    public void close() {
        search.close();
    }
}
