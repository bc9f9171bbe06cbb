package org.pipwright.engine.rollout;

import java.util.Arrays;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadPlayer;
import org.pipwright.engine.search.RollLuck;

/** Games without the cube, measured in the six chances, from which their points follow. */
final class ChanceMeasure implements Measure {
    /** Where the six chances, with the luck taken off, are among the numbers of a trial. */
    static final int CHANCES = Moments.PLAIN + 1;

    /** Numbers of a trial: equity less luck, equity, and the six chances less their luck. */
    static final int NUMBERS = CHANCES + Outcomes.COUNT;

    /** Rolls of a trial before which positions are likely to come again in another trial. */
    private static final int EARLY = 3;

    private static final int HALF = Outcomes.COUNT / 2;

    private final Judgement judgement;
    private final StakedGames.Side side;
    private final RollLuck luck;
    private final EarlyLuck earlyLuck;

    /** What the game came to, for the side on roll at the start. */
    private final float[] outcome = new float[Outcomes.COUNT];

    /** The same of the counted side. */
    private final double[] plain = new double[Outcomes.COUNT];

    private final double[] luckOfRoll = new double[Outcomes.COUNT];

    /** Luck so far of the side on roll at the start. */
    private final double[] luckOfGame = new double[Outcomes.COUNT];

    ChanceMeasure(Judgement judgement, RolloutSettings settings) {
        this.judgement = judgement;
        side = StakedGames.Side.blind(
                new LookaheadPlayer(new Lookahead(judgement, settings.pruning()), settings.lookahead()));
        luck = new RollLuck(judgement.evaluator());
        earlyLuck = new EarlyLuck(luck);
    }

    @Override
    public StakedGames.Side side() {
        return side;
    }

    @Override
    public void begin() {
        Arrays.fill(luckOfGame, 0);
    }

    @Override
    public boolean known(int[] planes, int at, CubeGame game) {
        boolean known = judgement.horizon().write(planes, at, outcome, 0);
        if (known && !game.firstOnRoll()) {
            Chances.swap(outcome, 0);
        }
        return known;
    }

    @Override
    public void judge(int[] planes, int at, CubeGame game) {
        judgement.evaluator().evaluate(planes, at, outcome, 0);
        if (!game.firstOnRoll()) {
            Chances.swap(outcome, 0);
        }
    }

    @Override
    public void takeLuck(int[] planes, Roll roll, int number, CubeGame game) {
        if (number <= EARLY) {
            earlyLuck.measure(planes, roll, luckOfRoll);
        } else {
            luck.measure(planes, 0, roll, luckOfRoll);
        }
        for (int k = 0; k < Outcomes.COUNT; k++) {
            luckOfGame[k] += luckOfRoll[game.firstOnRoll() ? k : (k + HALF) % Outcomes.COUNT];
        }
    }

    @Override
    public void write(Start start, Stakes stakes, CubeGame game, double[] results, int at) {
        if (game.over()) {
            Arrays.fill(outcome, 0);
            outcome[game.points() > 0 ? game.points() - 1 : HALF - 1 - game.points()] = 1;
        }
        write(start, results, at);
    }

    @Override
    public void writeFinished(Start start, Stakes stakes, double[] results, int at) {
        begin();
        FinishedGames.write(start.position().toPlanes(), 0, outcome, 0);
        write(start, results, at);
    }

    private void write(Start start, double[] results, int at) {
        for (int k = 0; k < Outcomes.COUNT; k++) {
            int to = start.counted() ? k : (k + HALF) % Outcomes.COUNT;
            plain[to] = outcome[k];
            results[at + CHANCES + to] = outcome[k] - luckOfGame[k];
        }
        results[at + Moments.VALUE] = Chances.equity(results, at + CHANCES);
        results[at + Moments.PLAIN] = Chances.equity(plain, 0);
    }
}
