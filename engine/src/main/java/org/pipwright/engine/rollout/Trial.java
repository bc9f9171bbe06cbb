package org.pipwright.engine.rollout;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;

/** Plays trials, one after another, for one thread. */
final class Trial {
    private final RolloutSettings settings;
    private final Judgement judgement;
    private final Function<Stakes, CubeTerms> terms;
    private final StakedGames games = new StakedGames();

    /** Made at first need: players may keep much memory. */
    private ChanceMeasure chances;

    private WorthMeasure worth;

    private Measure measure;
    private boolean rolling;
    private int rolls;
    private CubeGame game;
    private BooleanSupplier stopped = () -> false;

    /**
     * A player of trials.
     *
     * @param judgement used by this object only
     * @param terms how to judge under given stakes with the cube, seen from the side on roll; for one thread
     */
    Trial(Judgement judgement, Function<Stakes, CubeTerms> terms, RolloutSettings settings) {
        this.settings = settings;
        this.judgement = judgement;
        this.terms = terms;
    }

    /** Numbers a trial under such stakes writes. */
    static int numbers(Stakes stakes) {
        return stakes instanceof CubelessStakes ? ChanceMeasure.NUMBERS : WorthMeasure.NUMBERS;
    }

    /** How this thread judges under given stakes. */
    CubeTerms terms(Stakes stakes) {
        return terms.apply(stakes);
    }

    private Measure measure(Stakes stakes) {
        if (stakes instanceof CubelessStakes) {
            chances = chances == null ? new ChanceMeasure(judgement, settings) : chances;
            return chances;
        }
        worth = worth == null ? new WorthMeasure(judgement.evaluator(), terms, settings.lookahead()) : worth;
        return worth;
    }

    /**
     * Plays a game.
     *
     * @param stakes seen from the side on roll at the start
     * @param stopped asked before each roll whether to give up, with a {@link CancellationException}
     * @param results where to write its numbers: {@link #numbers} of the counted side
     * @param at index of the first
     */
    void play(Start start, Stakes stakes, long number, BooleanSupplier stopped, double[] results, int at) {
        this.stopped = stopped;
        measure = measure(stakes);
        if (start.position().finished()) {
            measure.writeFinished(start, stakes, results, at);
            return;
        }
        measure.begin();
        game = new CubeGame(stakes, start.cube());
        rolling = start.rolling();
        if (rolling) {
            game.act(CubeAction.ROLL);
        }
        rolls = 0;
        TrialDice dice = new TrialDice(settings.seed(), number);
        Dice ties = Dice.ofGame(~settings.seed(), number);
        StakedGames.Side side = measure.side();
        games.play(start.position(), game, dice, side, side, ties, this::turn, this::ends);
        measure.write(start, stakes, game, results, at);
    }

    private void turn(int[] planes, Roll roll, PlayGenerator legal, int chosen) {
        if (settings.luckAdjusted()) {
            measure.takeLuck(planes, roll, rolls, game);
        }
    }

    /** Where the rest is known exactly, and as the evaluator sees it after enough rolls. */
    private boolean ends(int[] planes, int at, CubeGame now) {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the rollout was stopped");
        }
        boolean enough = settings.truncation() > 0 && rolls >= settings.truncation();
        if (rolls++ == 0 && rolling) {
            return false;
        }
        if (measure.known(planes, at, now)) {
            return true;
        }
        if (enough) {
            measure.judge(planes, at, now);
        }
        return enough;
    }
}
