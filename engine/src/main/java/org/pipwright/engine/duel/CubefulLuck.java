package org.pipwright.engine.duel;

import java.util.function.Function;
import org.pipwright.engine.cube.AfterPlay;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollLuck;

/**
 * The luck of the rolls of a game with the cube, in what counts at the end: points, or the chance to win the match. What
 * happens with the cube is no luck: each roll's luck is measured with the cube as it then stands, so it is 0 on average
 * whatever both sides do, and taking it off leaves means where they are. The same holds for the die that says who starts.
 * Each side's rolls are valued by an evaluator of its own. Serves one thread.
 */
final class CubefulLuck {
    private final RollLuck aLuck;
    private final RollLuck bLuck;
    private final Outcomes aStart;
    private final Outcomes bStart;
    private final Function<Stakes, CubeTerms> terms;
    private final AfterPlay afterPlay = new AfterPlay();

    CubefulLuck(PositionEvaluator a, PositionEvaluator b, Function<Stakes, CubeTerms> terms) {
        aLuck = new RollLuck(a);
        bLuck = new RollLuck(b);
        aStart = a.evaluate(Position.start());
        bStart = b.evaluate(Position.start());
        this.terms = terms;
    }

    /** Luck of a roll for the side on roll, which is A or B. */
    double ofRoll(boolean a, int[] planes, Roll roll, boolean opening, CubeGame game) {
        CubeTerms mine = terms.apply(game.stakes());
        CubeState cube = game.cube();
        double luck = (a ? aLuck : bLuck)
                .measure(
                        planes,
                        0,
                        roll,
                        opening,
                        (results, at, chances, chancesAt) ->
                                afterPlay.worth(mine, cube, results, at, chances, chancesAt));
        return mine.inAll(luck, cube);
    }

    /** Luck of having the first roll of a game, for the side that has it. */
    double ofStarting(Stakes stakes) {
        return (starting(stakes, aStart) + starting(stakes, bStart)) / 2;
    }

    private double starting(Stakes stakes, Outcomes start) {
        CubeTerms mine = terms.apply(stakes);
        CubeTerms theirs = mine.swapped();
        double onRoll = mine.values(Position.start(), start, CubeState.START).noDouble();
        double waiting = theirs.toOther(
                theirs.values(Position.start(), start, CubeState.START).noDouble());
        return (onRoll - waiting) / 2;
    }
}
