package org.pipwright.cli.command;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.cli.batch.Answerer;
import org.pipwright.cli.batch.Question;
import org.pipwright.cli.report.Bases;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.RaceJudge;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;

/** The chances of one position after another, by one thread. */
final class OddsLines implements Answerer {
    private final NetLabel label;
    private final Depth depth;
    private final boolean simulate;
    private final NetworkEvaluator net;
    private final PlaySearch search;
    private final RaceJudge races;

    OddsLines(Model model, NetLabel label, EndgameTables tables, int lookahead, boolean simulate) {
        this.label = label;
        this.depth = new Depth(lookahead);
        this.simulate = simulate;
        net = new NetworkEvaluator(model);
        search = new PlaySearch(Judges.of(model, tables), LookaheadSettings.DEFAULT, 1);
        races = new RaceJudge(tables);
    }

    @Override
    public void answer(Question question, long line, JsonGenerator json) throws IOException {
        report(question.position()).write(json, line);
    }

    private OddsReport report(Position position) {
        if (simulate && Bases.beyondTables(position)) {
            return new OddsReport(position, label, races.outlook(position).outcomes(), Depth.STATIC, true);
        }
        return position.finished()
                ? new OddsReport(position, label, net.evaluate(position), Depth.STATIC, false)
                : new OddsReport(position, label, search.odds(position, depth.lookahead()), depth, false);
    }

    @Override
    public void close() {
        search.close();
    }
}
