package org.pipwright.bench.strength;

import java.util.List;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.Pruning;

/** Chooses by rollouts of the plays that lookahead 1 leaves for a deeper look; a single one is played at once. */
final class RolloutChooser implements Chooser, AutoCloseable {
    /** Which plays those are: the ones that lookahead 2 would value. */
    private static final Pruning KEPT = LookaheadSettings.DEFAULT.root().get(1);

    /** Far from those of references, which begin at their decision's number: the same dice would err alike. */
    private static final long FIRST_SEED = 1L << 40;

    private final Knowledge knowledge;
    private final RolloutSettings settings;
    private final int threads;
    private final Judge judge;
    private long seed = FIRST_SEED;

    RolloutChooser(Knowledge knowledge, RolloutSettings settings, int threads) {
        this.knowledge = knowledge;
        this.settings = settings;
        this.threads = threads;
        judge = new Judge(knowledge, threads);
    }

    /** Each decision has dice of its own, so that errors of different decisions are independent. */
    @Override
    public Position choose(Position position, Roll roll) {
        seed++;
        List<Play> candidates = candidates(position, roll);
        if (candidates.size() == 1) {
            return candidates.get(0).result();
        }
        try (Rollouts rollouts = new Rollouts(knowledge::judgement, settings.withSeed(seed), threads)) {
            RolloutReport report = rollouts.compare(position, roll, candidates, RolloutListener.NONE);
            return candidates.get(report.lines().get(0).candidate()).result();
        }
    }

    List<Play> candidates(Position position, Roll roll) {
        Effort effort = Effort.lookahead(1).withRaces(false);
        List<PlayVerdict> ranking =
                judge.ask(Question.of(position, roll), effort).plays();
        return ranking.stream()
                .filter(play -> play.depth().equals(ranking.get(0).depth()))
                .filter(play -> play.cost() >= -KEPT.within())
                .limit(KEPT.most())
                .map(PlayVerdict::play)
                .toList();
    }

    @Override
    public void close() {
        judge.close();
    }
}
