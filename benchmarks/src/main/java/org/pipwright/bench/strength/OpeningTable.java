package org.pipwright.bench.strength;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.PlaySearch;

/** The first plays that a net finds best, beside those that printed sources name. */
final class OpeningTable {
    /** Plays of each roll that are rolled out, besides those that sources name. */
    private static final int ROLLED = 4;

    private OpeningTable() {}

    /** With some lookahead and no rollout. */
    static List<OpeningLine> searched(PlaySearch search, int lookahead) {
        List<OpeningLine> lines = new ArrayList<>();
        for (Opening opening : Opening.all()) {
            List<RankedPlay> ranking = search.rank(Position.start(), opening.roll(), lookahead);
            RankedPlay best = ranking.get(0);
            // Named plays that were narrowed away are valued like the best one.
            RankedPlay named = search.rank(Position.start(), opening.roll(), opening.best(), lookahead)
                    .get(0);
            double cost = opening.isBest(best.play()) ? 0 : named.equity() - best.equity();
            lines.add(new OpeningLine(
                    opening, best.play(), best.equity(), OptionalDouble.empty(), cost, OptionalDouble.empty()));
        }
        return lines;
    }

    /** By rollouts of the best few plays and the named ones. */
    static List<OpeningLine> rolledOut(PlaySearch search, Rollouts rollouts) {
        return Opening.all().stream()
                .map(opening -> rolledOut(opening, search, rollouts))
                .collect(Collectors.toList());
    }

    private static OpeningLine rolledOut(Opening opening, PlaySearch search, Rollouts rollouts) {
        Map<Position, Play> plays = new LinkedHashMap<>();
        search.rank(Position.start(), opening.roll(), 1).stream()
                .limit(ROLLED)
                .forEach(ranked -> plays.put(ranked.play().result(), ranked.play()));
        opening.best().forEach(play -> plays.putIfAbsent(play.result(), play));
        opening.close().forEach(play -> plays.putIfAbsent(play.result(), play));
        List<Play> candidates = List.copyOf(plays.values());
        RolloutReport report = rollouts.compare(Position.start(), opening.roll(), candidates, RolloutListener.NONE);
        RolloutLine best = report.lines().get(0);
        RolloutLine named = report.lines().stream()
                .filter(line -> opening.isBest(candidates.get(line.candidate())))
                .findFirst()
                .orElseThrow();
        return new OpeningLine(
                opening,
                candidates.get(best.candidate()),
                best.value().mean(),
                OptionalDouble.of(best.value().standardError()),
                named.behind().mean(),
                OptionalDouble.of(named.behind().standardError()));
    }
}
