package org.pipwright.training.selfplay;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.Judgement;

/** Chances by a short rollout with variance reduction, whose dice are drawn from those of the game. */
public final class RolloutTarget implements SampleTarget {
    private static final int SEEDS = 1 << 30;

    private final Judgement judgement;
    private final RolloutSettings settings;

    /**
     * Targets for one thread.
     *
     * @param judgement what both sides think with
     * @param games a rollout, rounded up to a multiple of {@value RolloutSettings#ROUND}
     * @param rolls after which a game is truncated and valued; 0 to play it out
     */
    public RolloutTarget(Judgement judgement, int games, int rolls) {
        this.judgement = judgement;
        this.settings = RolloutSettings.DEFAULT.withTrials(games).withTruncation(rolls);
    }

    @Override
    public void write(int[] planes, int at, Dice dice, float[] out, int outAt) {
        RolloutSettings own = settings.withSeed(dice.below(SEEDS));
        try (Rollouts rollouts = new Rollouts(() -> judgement, own, 1)) {
            Outcomes chances = rollouts.odds(Position.ofPlanes(planes, at), WorkFile.NONE, RolloutListener.NONE)
                    .lines()
                    .get(0)
                    .outcomes();
            out[outAt] = (float) chances.winSingle();
            out[outAt + 1] = (float) chances.winGammon();
            out[outAt + 2] = (float) chances.winBackgammon();
            out[outAt + 3] = (float) chances.loseSingle();
            out[outAt + 4] = (float) chances.loseGammon();
            out[outAt + 5] = (float) chances.loseBackgammon();
        }
    }
}
