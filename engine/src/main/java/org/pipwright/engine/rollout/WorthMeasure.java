package org.pipwright.engine.rollout;

import java.util.OptionalDouble;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.cubeplay.StakedLuck;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** Games with the cube, measured in what counts in the end: points, or the chance to win the match. */
final class WorthMeasure implements Measure {
    /** Of the numbers of a trial: 1 if somebody doubled, else 0. */
    static final int DOUBLED = Moments.PLAIN + 1;

    /** 1 if it was passed, else 0. */
    static final int PASSED = DOUBLED + 1;

    /** What the cube showed at the end. */
    static final int CUBE = PASSED + 1;

    /** Numbers of a trial: value less luck, value, and the three above. */
    static final int NUMBERS = CUBE + 1;

    private final PositionEvaluator evaluator;
    private final Function<Stakes, CubeTerms> terms;
    private final StakedGames.Side side;
    private final StakedLuck luck;

    /** Luck so far of the side on roll at the start. */
    private double luckOfFirst;

    /** Value to that side where the game was ended. */
    private double valueAtEnd;

    WorthMeasure(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms, int lookahead) {
        this.evaluator = evaluator;
        this.terms = terms;
        side = StakedGames.Side.judging(evaluator, terms, lookahead);
        luck = new StakedLuck(evaluator, terms);
    }

    @Override
    public StakedGames.Side side() {
        return side;
    }

    @Override
    public void begin() {
        luckOfFirst = 0;
    }

    @Override
    public boolean known(int[] planes, int at, CubeGame game) {
        OptionalDouble known = terms.apply(game.stakes()).known(Position.ofPlanes(planes, at), game.cube());
        known.ifPresent(value -> end(value, game));
        return known.isPresent();
    }

    @Override
    public void judge(int[] planes, int at, CubeGame game) {
        Position position = Position.ofPlanes(planes, at);
        CubeTerms mine = terms.apply(game.stakes());
        end(mine.best(position, evaluator.evaluate(position), game.cube()), game);
    }

    private void end(double value, CubeGame game) {
        CubeTerms mine = terms.apply(game.stakes());
        double total = mine.inAll(value, game.cube());
        valueAtEnd = game.firstOnRoll() ? total : mine.toOther(total);
    }

    @Override
    public void takeLuck(int[] planes, Roll roll, int number, CubeGame game) {
        double value = luck.of(planes, roll, false, game);
        luckOfFirst += game.firstOnRoll() ? value : -value;
    }

    @Override
    public void write(Start start, Stakes stakes, CubeGame game, double[] results, int at) {
        CubeTerms first = terms.apply(stakes);
        double value = game.over() ? first.ended(game.points()) : valueAtEnd;
        double adjusted = value - luckOfFirst;
        results[at + Moments.VALUE] = start.counted() ? adjusted : first.toOther(adjusted);
        results[at + Moments.PLAIN] = start.counted() ? value : first.toOther(value);
        results[at + DOUBLED] =
                game.passed() || game.cube().value() > start.cube().value() ? 1 : 0;
        results[at + PASSED] = game.passed() ? 1 : 0;
        results[at + CUBE] = game.cube().value();
    }

    @Override
    public void writeFinished(Start start, Stakes stakes, double[] results, int at) {
        CubeTerms winner = terms.apply(stakes.swapped());
        double won = winner.won(GameResult.of(start.position()), start.cube().swapped());
        double value = winner.inAll(won, start.cube());
        results[at + Moments.VALUE] = start.counted() ? winner.toOther(value) : value;
        results[at + Moments.PLAIN] = results[at + Moments.VALUE];
        results[at + DOUBLED] = 0;
        results[at + PASSED] = 0;
        results[at + CUBE] = start.cube().value();
    }
}
