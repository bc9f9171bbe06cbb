package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.cli.report.Bases;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.RaceJudge;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.RankedPlay;

/**
 * Races beyond the tables, which are simulated instead of asking the net: that is far more accurate, whatever the net's
 * lookahead, and takes some hundredths of a second each.
 */
final class RaceSimulation {
    private RaceSimulation() {}

    /** The chances of a race beyond the tables, for the side on roll. */
    static Outcomes odds(Position race, EndgameTables tables) {
        return new RaceJudge(tables).outlook(race).outcomes();
    }

    /** The ranking with the plays that lead to such races valued anew; they count as deep as the deepest of the others. */
    static List<RankedPlay> refined(List<RankedPlay> ranking, EndgameTables tables, int threads) {
        List<RankedPlay> races =
                ranking.stream().filter(ranked -> leadsToOne(ranked.play())).toList();
        if (races.isEmpty()) {
            return ranking;
        }
        Outcomes[] simulated = new Outcomes[races.size()];
        try (Crew<RaceJudge> crew = new Crew<>(Math.min(threads, races.size()), () -> new RaceJudge(tables))) {
            crew.run(simulated.length, (judge, task) -> {
                Position next = races.get(task).play().next();
                simulated[task] = judge.outlook(next).outcomes().swapped();
            });
        }
        Depth deepest = ranking.get(0).depth();
        List<RankedPlay.Evaluated> mixed = new ArrayList<>();
        for (RankedPlay ranked : ranking) {
            int race = races.indexOf(ranked);
            mixed.add(
                    race < 0
                            ? new RankedPlay.Evaluated(
                                    ranked.play(), ranked.outcomes(), ranked.equity(), ranked.depth())
                            : new RankedPlay.Evaluated(ranked.play(), simulated[race], deepest));
        }
        return RankedPlay.inOrder(mixed);
    }

    private static boolean leadsToOne(Play play) {
        return Bases.beyondTables(play.result());
    }
}
