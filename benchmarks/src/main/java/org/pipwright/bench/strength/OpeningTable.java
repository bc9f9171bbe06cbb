package org.pipwright.bench.strength;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.training.report.PrintedOpening;

/** The first plays that a net finds best, beside those that printed sources name. */
final class OpeningTable {
    /** Plays of each roll that are rolled out, besides those that sources name. */
    private static final int ROLLED = 4;

    private OpeningTable() {}

    /** With some lookahead and no rollout. */
    static List<OpeningLine> searched(Judge judge, int lookahead) {
        Effort effort = Effort.lookahead(lookahead);
        List<OpeningLine> lines = new ArrayList<>();
        for (PrintedOpening opening : PrintedOpening.all()) {
            Question question = Question.of(Position.start(), opening.roll());
            PlayVerdict best = judge.ask(question, effort).best();
            // Named plays that were pruned are valued like the best one.
            PlayVerdict named = judge.ask(question.only(opening.best()), effort).best();
            double cost = opening.isBest(best.play()) ? 0 : named.equity() - best.equity();
            lines.add(new OpeningLine(
                    opening, best.play(), best.equity(), OptionalDouble.empty(), cost, OptionalDouble.empty()));
        }
        return lines;
    }

    /** By rollouts of the best few plays and the named ones. */
    static List<OpeningLine> rolledOut(Judge judge, Rollouts rollouts) {
        return PrintedOpening.all().stream()
                .map(opening -> rolledOut(opening, judge, rollouts))
                .collect(Collectors.toList());
    }

    private static OpeningLine rolledOut(PrintedOpening opening, Judge judge, Rollouts rollouts) {
        Map<Position, Play> plays = new LinkedHashMap<>();
        judge.ask(Question.of(Position.start(), opening.roll()), Effort.lookahead(1)).plays().stream()
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
