package org.pipwright.bench.strength;

import java.util.List;
import java.util.function.Supplier;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.Narrowing;
import org.pipwright.engine.search.PlaySearch;

/** Chooses by rollouts of the plays that lookahead 1 leaves for a deeper look; a single one is played at once. */
final class RolloutChooser implements Chooser, AutoCloseable {
    /** Which plays those are: the ones that lookahead 2 would value. */
    private static final Narrowing KEPT = LookaheadSettings.DEFAULT.root().get(1);

    /** Far from those of references, which begin at their decision's number: the same dice would err alike. */
    private static final long FIRST_SEED = 1L << 40;

    private final Supplier<Judgement> judgements;
    private final RolloutSettings settings;
    private final int threads;
    private final PlaySearch search;
    private long seed = FIRST_SEED;

    RolloutChooser(Supplier<Judgement> judgements, RolloutSettings settings, int threads) {
        this.judgements = judgements;
        this.settings = settings;
        this.threads = threads;
        search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, threads);
    }

    /** Each decision has dice of its own, so that errors of different decisions are independent. */
    @Override
    public Position choose(Position position, Roll roll) {
        seed++;
        List<Play> candidates = candidates(position, roll);
        if (candidates.size() == 1) {
            return candidates.get(0).result();
        }
        try (Rollouts rollouts = new Rollouts(judgements, settings.withSeed(seed), threads)) {
            RolloutReport report = rollouts.compare(position, roll, candidates, RolloutListener.NONE);
            return candidates.get(report.lines().get(0).candidate()).result();
        }
    }

    List<Play> candidates(Position position, Roll roll) {
        List<RankedPlay> ranking = search.rank(position, roll, 1);
        return ranking.stream()
                .filter(play -> play.depth().equals(ranking.get(0).depth()))
                .filter(play -> play.cost() >= -KEPT.within())
                .limit(KEPT.most())
                .map(RankedPlay::play)
                .toList();
    }

    @Override
    public void close() {
        search.close();
    }
}
