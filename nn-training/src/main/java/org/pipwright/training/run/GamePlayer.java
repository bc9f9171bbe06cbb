package org.pipwright.training.run;

import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.Judgement;
import org.pipwright.training.selfplay.SampleTarget;
import org.pipwright.training.selfplay.Samples;
import org.pipwright.training.selfplay.SelfPlay;

/** Plays games of a round by their numbers. Serves one thread. */
final class GamePlayer {
    private static final int ROOM = 64;

    private final SelfPlay play;
    private final long seed;
    private final float lambda;

    /** A player; {@code target} and {@code judgement} are for this thread alone. */
    GamePlayer(RoundRules rules, float lambda, Judgement judgement, SampleTarget target) {
        this.lambda = lambda;
        seed = rules.seed();
        play = new SelfPlay(judgement, rules.games(), target);
    }

    PlayedGame play(long number) {
        Samples samples = new Samples(ROOM);
        play.play(Dice.ofGame(seed, number), lambda, samples);
        return new PlayedGame(samples, play.outcome(), play.turns());
    }
}
