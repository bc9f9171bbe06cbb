package org.pipwright.engine.cubeplay;

import java.util.function.Function;
import org.pipwright.engine.cube.AfterPlay;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollLuck;

/**
 * The luck of rolls in what counts at the end: points with or without the cube, or the chance to win the match. What
 * happens with the cube is no luck: each roll's luck is measured with the cube as it then stands, so it is 0 on average
 * whatever both sides do, and taking it off leaves means where they are. Serves one thread.
 */
public final class StakedLuck {
    private final RollLuck luck;
    private final Function<Stakes, CubeTerms> terms;
    private final AfterPlay afterPlay = new AfterPlay();

    /**
     * A measure of luck.
     *
     * @param evaluator values positions; used by this object only, or between its calls
     * @param terms how to judge under given stakes with the cube, seen from the side on roll
     */
    public StakedLuck(PositionEvaluator evaluator, Function<Stakes, CubeTerms> terms) {
        luck = new RollLuck(evaluator);
        this.terms = terms;
    }

    /**
     * The luck of a roll.
     *
     * @param planes the unfinished position, the side on roll first
     * @param roll the roll
     * @param opening whether it was the first roll of a game, which is never a double
     * @param game the game's cube when the roll was thrown
     * @return points or chance to win the match, for the side on roll; positive is good luck
     */
    public double of(int[] planes, Roll roll, boolean opening, CubeGame game) {
        if (game.stakes() instanceof CubelessStakes) {
            return luck.points(planes, 0, roll, opening);
        }
        CubeTerms mine = terms.apply(game.stakes());
        CubeState cube = game.cube();
        double change = luck.measure(
                planes,
                0,
                roll,
                opening,
                (results, at, chances, chancesAt) -> afterPlay.worth(mine, cube, results, at, chances, chancesAt));
        return mine.inAll(change, cube);
    }
}
