package org.pipwright.training.selfplay;

import java.util.Arrays;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.training.settings.SampledPositions;

/** Plays games of an evaluator against itself and turns them into samples. Serves one thread. */
public final class SelfPlay {
    private static final int PARTS = 1 << 20;

    private final GameLoop loop = new GameLoop();
    private final EvaluatingPlayer player;
    private final PositionEvaluator evaluator;
    private final Horizon horizon;
    private final SelfPlayRules rules;
    private final Starts starts;
    private final SampleTarget target;
    private final float[] outcome = new float[Outcomes.COUNT];
    private int[] positions = new int[256 * Planes.STRIDE];
    private float[] values = new float[256 * Outcomes.COUNT];
    private boolean[] forced = new boolean[256];
    private int turns;

    /**
     * Self-play of one evaluator.
     *
     * @param judgement what both sides think with, and where games end because their chances are known
     * @param rules how games begin and which samples they give
     * @param target what samples should give
     */
    public SelfPlay(Judgement judgement, SelfPlayRules rules, SampleTarget target) {
        this.player = new EvaluatingPlayer(judgement.evaluator());
        this.evaluator = judgement.evaluator();
        this.horizon = judgement.horizon();
        this.rules = rules;
        this.starts = new Starts(rules.start(), rules.randomOpenings());
        this.target = target;
    }

    /**
     * Plays a game.
     *
     * @param dice where rolls come from
     * @param lambda how far targets of TD(lambda) look ahead, 0 to 1
     * @param out receives the samples
     */
    public void play(Dice dice, float lambda, Samples out) {
        turns = 0;
        Position start = starts.choose(dice);
        Supplier<Roll> rolls = () -> turns == 0 && !rules.doublesMayOpen() ? dice.opening() : dice.next();
        loop.play(
                start,
                rolls,
                player,
                player,
                dice,
                (planes, roll, legal, chosen) -> keep(planes, legal.size()),
                this::ends,
                outcome);
        if (turns > 0) {
            writeEnd();
            TdTargets.apply(values, turns, lambda);
            int side = rules.sampled() == SampledPositions.ONE_SIDE ? dice.below(2) : 0;
            for (int t = 0; t < turns; t++) {
                if (!mayBeSampled(t, side)) {
                    continue;
                }
                if (rules.sampleShare() == 1 || dice.below(PARTS) < rules.sampleShare() * PARTS) {
                    sample(t, dice, out);
                }
            }
        }
    }

    private boolean ends(int[] planes, int at, float[] out, int outAt) {
        if (horizon.write(planes, at, out, outAt)) {
            return true;
        }
        if (turns < rules.maxTurns()) {
            return false;
        }
        evaluator.evaluate(planes, at, out, outAt);
        return true;
    }

    private boolean mayBeSampled(int turn, int side) {
        switch (rules.sampled()) {
            case CHOICES:
                return !forced[turn];
            case ONE_SIDE:
                return turn % 2 == side;
            default:
                return true;
        }
    }

    /** The game may have ended where its chances are known better than the player knew them. */
    private void writeEnd() {
        int last = (turns - 1) * Outcomes.COUNT;
        System.arraycopy(outcome, 0, values, last, Outcomes.COUNT);
        if (turns % 2 == 0) {
            Chances.swap(values, last);
        }
    }

    private void sample(int t, Dice dice, Samples out) {
        target.write(positions, t * Planes.STRIDE, dice, values, t * Outcomes.COUNT);
        out.add(positions, t * Planes.STRIDE, values, t * Outcomes.COUNT);
    }

    private void keep(int[] planes, int legal) {
        if ((turns + 1) * Planes.STRIDE > positions.length) {
            positions = Arrays.copyOf(positions, 2 * positions.length);
            values = Arrays.copyOf(values, 2 * values.length);
            forced = Arrays.copyOf(forced, 2 * forced.length);
        }
        forced[turns] = legal == 1;
        System.arraycopy(planes, 0, positions, turns * Planes.STRIDE, Planes.STRIDE);
        System.arraycopy(player.chancesOfChoice(), 0, values, turns * Outcomes.COUNT, Outcomes.COUNT);
        turns++;
    }

    /**
     * How the game played last ended.
     *
     * @return six chances of the side that began: certainty, or what is known where the game ended early
     */
    public float[] outcome() {
        return outcome.clone();
    }

    /**
     * Length of the game played last.
     *
     * @return rolls of both sides
     */
    public int turns() {
        return turns;
    }
}
