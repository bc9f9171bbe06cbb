package org.pipwright.engine.duel;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulRollLuck;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * The luck of the rolls of both sides, each valued by an evaluator of its own, and of the die that says who starts. Serves
 * one thread.
 */
final class CubefulLuck {
    private final CubefulRollLuck aLuck;
    private final CubefulRollLuck bLuck;
    private final Outcomes aStart;
    private final Outcomes bStart;
    private final Function<Stakes, CubeTerms> terms;

    CubefulLuck(PositionEvaluator a, PositionEvaluator b, Function<Stakes, CubeTerms> terms) {
        aLuck = new CubefulRollLuck(a, terms);
        bLuck = new CubefulRollLuck(b, terms);
        aStart = a.evaluate(Position.start());
        bStart = b.evaluate(Position.start());
        this.terms = terms;
    }

    /** Luck of a roll for the side on roll, which is A or B. */
    double ofRoll(boolean a, int[] planes, Roll roll, boolean opening, CubeGame game) {
        return (a ? aLuck : bLuck).of(planes, roll, opening, game);
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
