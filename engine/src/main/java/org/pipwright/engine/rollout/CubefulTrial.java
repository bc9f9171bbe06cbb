package org.pipwright.engine.rollout;

import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.cubeplay.StakedLuck;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** Plays trials with the cube, one after another, for one thread. */
final class CubefulTrial {
    /** Of the numbers of a trial: 1 if somebody doubled, else 0. */
    static final int DOUBLED = 2;

    /** 1 if it was passed, else 0. */
    static final int PASSED = 3;

    /** What the cube showed at the end. */
    static final int CUBE = 4;

    /** Numbers a trial writes: value less luck, value, and the three above. */
    static final int NUMBERS = 5;

    private final RolloutSettings settings;
    private final PositionEvaluator evaluator;
    private final Function<Stakes, CubeTerms> terms;
    private final StakedGames games = new StakedGames();
    private final StakedGames.Side side;
    private final StakedLuck luck;

    private CubeGame game;
    private boolean rolling;
    private int rolls;
    private double luckOfFirst;
    private double valueAtBreak;
    private BooleanSupplier stopped = () -> false;

    /**
     * A player of trials.
     *
     * @param evaluator gives chances; used by this object only
     * @param terms how to judge under given stakes, seen from the side on roll; for one thread
     */
    CubefulTrial(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms, RolloutSettings settings) {
        this.settings = settings;
        this.evaluator = evaluator;
        this.terms = terms;
        side = StakedGames.Side.judging(evaluator, terms, settings.lookahead());
        luck = new StakedLuck(evaluator, terms);
    }

    /** How this thread judges under given stakes. */
    CubeTerms terms(Stakes stakes) {
        return terms.apply(stakes);
    }

    /**
     * Plays a game.
     *
     * @param stakes seen from the side on roll at the start
     * @param stopped asked before each roll whether to give up, with a {@link CancellationException}
     * @param results where to write {@value #NUMBERS} numbers; values are in all (points or chance to win the match), for
     *     the counted side
     * @param at index of the first
     */
    void play(CubefulStart start, Stakes stakes, long number, BooleanSupplier stopped, double[] results, int at) {
        this.stopped = stopped;
        if (start.position().finished()) {
            finished(start, stakes, results, at);
            return;
        }
        game = new CubeGame(stakes, start.cube());
        rolling = start.rolling();
        if (rolling) {
            game.act(CubeAction.ROLL);
        }
        rolls = 0;
        luckOfFirst = 0;
        TrialDice dice = new TrialDice(settings.seed(), number);
        Dice ties = Dice.ofGame(~settings.seed(), number);
        int points = games.play(start.position(), game, dice, side, side, ties, this::turn, this::ends);
        CubeTerms first = terms.apply(stakes);
        double value = game.over() ? first.ended(points) : valueAtBreak;
        double adjusted = value - luckOfFirst;
        results[at + Moments.VALUE] = start.counted() ? adjusted : first.toOther(adjusted);
        results[at + Moments.PLAIN] = start.counted() ? value : first.toOther(value);
        results[at + DOUBLED] =
                game.passed() || game.cube().value() > start.cube().value() ? 1 : 0;
        results[at + PASSED] = game.passed() ? 1 : 0;
        results[at + CUBE] = game.cube().value();
    }

    /** The side that is not on roll has just won. */
    private void finished(CubefulStart start, Stakes stakes, double[] results, int at) {
        CubeTerms winner = terms.apply(stakes.swapped());
        double won = winner.won(GameResult.of(start.position()), start.cube().swapped());
        double value = winner.inAll(won, start.cube());
        results[at + Moments.VALUE] = start.counted() ? winner.toOther(value) : value;
        results[at + Moments.PLAIN] = results[at + Moments.VALUE];
        results[at + DOUBLED] = 0;
        results[at + PASSED] = 0;
        results[at + CUBE] = start.cube().value();
    }

    private void turn(int[] planes, Roll roll, PlayGenerator legal, int chosen) {
        if (settings.luckAdjusted()) {
            double value = luck.of(planes, roll, false, game);
            luckOfFirst += game.firstOnRoll() ? value : -value;
        }
    }

    /** Where the value is known exactly, and by the model after enough rolls. */
    private boolean ends(int[] planes, int at, CubeGame now) {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the rollout was stopped");
        }
        if (rolls++ == 0 && rolling) {
            return false;
        }
        Position position = Position.ofPlanes(planes, at);
        CubeTerms mine = terms.apply(now.stakes());
        OptionalDouble known = mine.known(position, now.cube());
        boolean enough = settings.truncation() > 0 && rolls > settings.truncation();
        if (known.isEmpty() && !enough) {
            return false;
        }
        double value =
                known.isPresent() ? known.getAsDouble() : mine.best(position, evaluator.evaluate(position), now.cube());
        double total = mine.inAll(value, now.cube());
        valueAtBreak = now.firstOnRoll() ? total : mine.toOther(total);
        return true;
    }
}
