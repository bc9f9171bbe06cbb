package org.pipwright.engine.rollout;

import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadPlayer;
import org.pipwright.engine.search.RollLuck;

/** Plays trials, one after another, for one thread. */
final class Trial {
    /** Where the six chances, with the luck taken off, are among the numbers of a trial. */
    static final int CHANCES = Moments.PLAIN + 1;

    /** Numbers a trial writes: equity less luck, equity, and the six chances less their luck. */
    static final int NUMBERS = CHANCES + Outcomes.COUNT;

    /** Rolls of a trial before which positions are likely to come again in another trial. */
    private static final int EARLY = 3;

    private final RolloutSettings settings;
    private final Judgement judgement;
    private final GameLoop loop = new GameLoop();
    private final LookaheadPlayer player;
    private final RollLuck luck;
    private final EarlyLuck earlyLuck;
    private final TurnListener listener;
    private final float[] outcome = new float[Outcomes.COUNT];

    /** Those of the counted side. */
    private final double[] plain = new double[Outcomes.COUNT];

    private final double[] luckOfRoll = new double[Outcomes.COUNT];

    /** Luck so far of the side on roll at the start. */
    private final double[] luckOfGame = new double[Outcomes.COUNT];

    private int rollsSeen;
    private BooleanSupplier stopped = () -> false;

    Trial(Judgement judgement, RolloutSettings settings) {
        this.settings = settings;
        this.judgement = judgement;
        player = new LookaheadPlayer(new Lookahead(judgement, settings.narrowing()), settings.lookahead());
        luck = new RollLuck(judgement.evaluator());
        earlyLuck = new EarlyLuck(luck);
        listener = settings.luckAdjusted() ? this::takeLuck : TurnListener.NONE;
    }

    /**
     * Plays a game.
     *
     * @param stopped asked before each roll whether to give up, with a {@link CancellationException}
     * @param results where to write {@value #NUMBERS} numbers of the counted side
     * @param at index of the first
     */
    void play(Start start, long number, BooleanSupplier stopped, double[] results, int at) {
        this.stopped = stopped;
        rollsSeen = 0;
        Arrays.fill(luckOfGame, 0);
        TrialDice dice = new TrialDice(settings.seed(), number);
        Dice ties = Dice.ofGame(~settings.seed(), number);
        loop.play(start.position(), dice, player, player, ties, listener, this::ends, outcome);
        int half = Outcomes.COUNT / 2;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            int to = start.counted() ? k : (k + half) % Outcomes.COUNT;
            plain[to] = outcome[k];
            results[at + CHANCES + to] = outcome[k] - luckOfGame[k];
        }
        results[at + Moments.VALUE] = Chances.equity(results, at + CHANCES);
        results[at + Moments.PLAIN] = Chances.equity(plain, 0);
    }

    /** Before each roll: exact chances where they are known, the net's after enough rolls. */
    private boolean ends(int[] planes, int at, float[] out, int outAt) {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the rollout was stopped");
        }
        if (judgement.horizon().write(planes, at, out, outAt)) {
            return true;
        }
        if (settings.truncation() == 0 || rollsSeen < settings.truncation()) {
            rollsSeen++;
            return false;
        }
        judgement.evaluator().evaluate(planes, at, out, outAt);
        return true;
    }

    private void takeLuck(int[] planes, Roll roll, PlayGenerator legal, int chosen) {
        if (rollsSeen <= EARLY) {
            earlyLuck.measure(planes, roll, luckOfRoll);
        } else {
            luck.measure(planes, 0, roll, luckOfRoll);
        }
        boolean ofStarter = rollsSeen % 2 == 1;
        int half = Outcomes.COUNT / 2;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            luckOfGame[k] += luckOfRoll[ofStarter ? k : (k + half) % Outcomes.COUNT];
        }
    }
}
