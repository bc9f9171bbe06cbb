package org.pipwright.bench.strength;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;

/** Finds out what the plays of decisions are worth: candidates by lookahead 1, then rollouts of these. */
final class Referee implements AutoCloseable {
    /** Fewer games say too little of their own spread to stop on. */
    private static final int MIN_TRIALS = 144;

    private static final int MIN_CANDIDATES = 2;

    /** Every play is looked at alike. */
    private static final Effort EFFORT = Effort.lookahead(1).withRaces(false);

    private final Knowledge knowledge;
    private final ReferenceHeader header;
    private final int threads;
    private final Judge judge;

    Referee(Knowledge knowledge, ReferenceHeader header, int threads) {
        this.knowledge = knowledge;
        this.header = header;
        this.threads = threads;
        judge = new Judge(knowledge, threads);
    }

    Reference judge(Decision decision) {
        return judge(decision, () -> false);
    }

    /** Gives up, by a cancellation, when it is told to stop. */
    Reference judge(Decision decision, BooleanSupplier stopped) {
        Position position = decision.board();
        Roll roll = decision.dice();
        List<Play> candidates = new ArrayList<>();
        Map<String, Double> others = new LinkedHashMap<>();
        Question every = Question.of(position, roll).only(Plays.legal(position, roll));
        for (PlayVerdict play :
                judge.ask(every, EFFORT, Progress.until(stopped)).plays()) {
            if (play.cost() >= -header.within() || candidates.size() < MIN_CANDIDATES) {
                candidates.add(play.play());
            } else {
                others.put(play.play().toString(), rounded(play.cost()));
            }
        }
        RolloutReport report = rollOut(decision, candidates, stopped);
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the rollout was stopped");
        }
        List<Reference.Rolled> plays =
                report.lines().stream().map(line -> rolled(candidates, line)).collect(Collectors.toList());
        return new Reference(
                decision.id(),
                decision.regime(),
                decision.position(),
                decision.roll(),
                decision.game(),
                report.trials(),
                plays,
                others);
    }

    /** Each decision has dice of its own, so that errors of different decisions are independent. */
    private RolloutReport rollOut(Decision decision, List<Play> candidates, BooleanSupplier stopped) {
        RolloutSettings settings = RolloutSettings.DEFAULT
                .withTrials(header.trials())
                .withSeed(header.seed() + decision.id())
                .withLookahead(header.lookahead())
                .withTruncation(header.truncation());
        try (Rollouts rollouts = new Rollouts(knowledge::judgement, settings, threads)) {
            return rollouts.compare(decision.board(), decision.dice(), candidates, new RolloutListener() {
                @Override
                public boolean round(RolloutReport report) {
                    return !exact(report);
                }

                @Override
                public boolean stopped() {
                    return stopped.getAsBoolean();
                }
            });
        }
    }

    private boolean exact(RolloutReport report) {
        return report.trials() >= MIN_TRIALS
                && report.lines().stream()
                        .allMatch(line -> header.exactEnough(
                                line.behind().mean(), line.behind().standardError()));
    }

    private static Reference.Rolled rolled(List<Play> candidates, RolloutLine line) {
        return new Reference.Rolled(
                candidates.get(line.candidate()).toString(),
                rounded(line.value().mean()),
                rounded(line.behind().mean()),
                rounded(line.behind().standardError()));
    }

    static double rounded(double points) {
        return Math.round(points * 1e5) / 1e5;
    }

    @Override
    public void close() {
        judge.close();
    }
}
