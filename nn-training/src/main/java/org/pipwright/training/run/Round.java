package org.pipwright.training.run;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.ChanceCache;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.training.selfplay.RolloutTarget;
import org.pipwright.training.selfplay.SampleTarget;
import org.pipwright.training.selfplay.Samples;
import org.pipwright.training.selfplay.SelfPlay;
import org.pipwright.training.selfplay.SelfPlayRules;
import org.pipwright.training.settings.GameSettings;
import org.pipwright.training.settings.OpeningRoll;
import org.pipwright.training.settings.TargetSettings;
import org.pipwright.training.settings.TrainingSettings;

/** The games of one round and their samples, in the order of the games whoever played them. */
final class Round {
    /** Room for the samples of some thousand short games; those of the full game hardly ever meet. */
    private static final int CACHE_BITS = 16;

    /** Samples of positions with contact. */
    final Samples contact = new Samples(1 << 15);
    /** Samples of races. */
    final Samples race = new Samples(1 << 14);
    /** Sum over the games of the chance that they ended as a gammon. */
    double gammons;
    /** The same of a backgammon. */
    double backgammons;

    long turns;

    /** Plays the games from {@code first} on; null if told to stop before the last. */
    static Round play(
            Model model,
            RunKnowledge knowledge,
            TrainingSettings settings,
            long first,
            int games,
            float lambda,
            Crew<Integer> workers,
            BooleanSupplier stop) {
        SelfPlayRules rules = rules(settings);
        long seed = settings.seed();
        Function<Judgement, SampleTarget> targets = targets(settings, knowledge);
        List<SelfPlay> players = new ArrayList<>();
        for (int w = 0; w < workers.size(); w++) {
            Judgement judgement = knowledge.of(model).judgement();
            players.add(new SelfPlay(judgement, rules, targets.apply(judgement)));
        }
        Samples[] samples = new Samples[games];
        float[][] outcomes = new float[games][];
        int[] turns = new int[games];
        workers.run(games, (worker, game) -> {
            if (stop.getAsBoolean()) {
                return;
            }
            SelfPlay player = players.get(worker);
            samples[game] = new Samples(64);
            player.play(Dice.ofGame(seed, first + game), lambda, samples[game]);
            outcomes[game] = player.outcome();
            turns[game] = player.turns();
        });
        if (stop.getAsBoolean()) {
            return null;
        }
        Round round = new Round();
        for (int game = 0; game < games; game++) {
            round.gammons += outcomes[game][1] + outcomes[game][4];
            round.backgammons += outcomes[game][2] + outcomes[game][5];
            round.turns += turns[game];
            round.add(samples[game]);
        }
        return round;
    }

    private static SelfPlayRules rules(TrainingSettings settings) {
        GameSettings games = settings.games();
        return new SelfPlayRules(
                Position.start(games.checkers()),
                games.randomOpenings(),
                games.opening() == OpeningRoll.ANY,
                games.maxTurns(),
                settings.samples().positions(),
                settings.samples().share());
    }

    /** Makes the targets of a thread from what it thinks with. */
    private static Function<Judgement, SampleTarget> targets(TrainingSettings settings, RunKnowledge knowledge) {
        TargetSettings targets = settings.targets();
        switch (targets.kind()) {
            case LOOKAHEAD:
                ChanceCache known = new ChanceCache(CACHE_BITS);
                return judgement -> {
                    Lookahead lookahead = new Lookahead(judgement, LookaheadSettings.DEFAULT, known, () -> false);
                    return (planes, at, dice, out, outAt) -> lookahead.evaluate(planes, at, 1, out, outAt);
                };
            case ROLLOUT:
                return judgement -> new RolloutTarget(judgement, targets.rolloutGames(), targets.rolloutTruncation());
            case NET:
                return judgement -> knowledge.taught();
            default:
                return judgement -> SampleTarget.TD;
        }
    }

    private void add(Samples samples) {
        for (int i = 0; i < samples.size(); i++) {
            boolean touching = Planes.contact(samples.planes(), i * Planes.STRIDE);
            (touching ? contact : race).add(samples.planes(), i * Planes.STRIDE, samples.targets(), i * Outcomes.COUNT);
        }
    }
}
