package org.pipwright.training.run;

import java.io.Serializable;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.search.ChanceCache;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.training.selfplay.RolloutTarget;
import org.pipwright.training.selfplay.SampleTarget;
import org.pipwright.training.selfplay.SelfPlayRules;
import org.pipwright.training.settings.GameSettings;
import org.pipwright.training.settings.OpeningRoll;
import org.pipwright.training.settings.TargetKind;
import org.pipwright.training.settings.TrainingSettings;

/**
 * How the games of all rounds are played and their targets made: what decides them beside the net, lambda and the number of
 * the game.
 *
 * @param games how games begin, and which samples they give
 * @param seed of their dice
 * @param targets what samples should give
 * @param rolloutGames games of a rollout that gives a target
 * @param rolloutTruncation rolls after which they are truncated
 */
record RoundRules(SelfPlayRules games, long seed, TargetKind targets, int rolloutGames, int rolloutTruncation)
        implements Serializable {
    /** Room for the samples of some thousand short games; those of the full game hardly ever meet. */
    private static final int CACHE_BITS = 16;

    static RoundRules of(TrainingSettings settings) {
        GameSettings games = settings.games();
        SelfPlayRules rules = new SelfPlayRules(
                Position.start(games.checkers()),
                games.randomOpenings(),
                games.opening() == OpeningRoll.ANY,
                games.maxTurns(),
                settings.samples().positions(),
                settings.samples().share());
        return new RoundRules(
                rules,
                settings.seed(),
                settings.targets().kind(),
                settings.targets().rolloutGames(),
                settings.targets().rolloutTruncation());
    }

    /**
     * Makes the targets of a thread from what it thinks with; threads share a memory.
     *
     * @param teacher makes what answers where targets are another net's
     */
    Function<Judgement, SampleTarget> targets(Supplier<PositionEvaluator> teacher) {
        switch (targets) {
            case LOOKAHEAD:
                ChanceCache known = new ChanceCache(CACHE_BITS);
                return judgement -> {
                    Lookahead lookahead = new Lookahead(judgement, LookaheadSettings.DEFAULT, known, () -> false);
                    return (planes, at, dice, out, outAt) -> lookahead.evaluate(planes, at, 1, out, outAt);
                };
            case ROLLOUT:
                return judgement -> new RolloutTarget(judgement, rolloutGames, rolloutTruncation);
            case NET:
                return judgement -> {
                    PositionEvaluator evaluator = teacher.get();
                    return (planes, at, dice, out, outAt) -> evaluator.evaluate(planes, at, out, outAt);
                };
            default:
                return judgement -> SampleTarget.TD;
        }
    }
}
