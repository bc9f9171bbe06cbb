package org.pipwright.engine.duel;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.StakedLuck;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * The luck of the rolls of both sides, each valued by an evaluator of its own, and of the die that says who starts a game of a match. Serves
 * one thread.
 */
final class DuelLuck {
    private final StakedLuck aLuck;
    private final StakedLuck bLuck;
    private final PositionEvaluator a;
    private final PositionEvaluator b;
    private final Function<Stakes, CubeTerms> terms;

    DuelLuck(PositionEvaluator a, PositionEvaluator b, Function<Stakes, CubeTerms> terms) {
        aLuck = new StakedLuck(a, terms);
        bLuck = new StakedLuck(b, terms);
        this.a = a;
        this.b = b;
        this.terms = terms;
    }

    /** Luck of a roll for the side on roll, which is A or B. */
    double ofRoll(boolean ofA, int[] planes, Roll roll, boolean opening, CubeGame game) {
        return (ofA ? aLuck : bLuck).of(planes, roll, opening, game);
    }

    /** Luck of having the first roll of a game with the cube, for the side that has it. */
    double ofStarting(Stakes stakes) {
        return (starting(stakes, a) + starting(stakes, b)) / 2;
    }

    private double starting(Stakes stakes, PositionEvaluator evaluator) {
        Outcomes start = evaluator.evaluate(Position.start());
        CubeTerms mine = terms.apply(stakes);
        CubeTerms theirs = mine.swapped();
        double onRoll = mine.values(Position.start(), start, CubeState.START).noDouble();
        double waiting = theirs.toOther(
                theirs.values(Position.start(), start, CubeState.START).noDouble());
        return (onRoll - waiting) / 2;
    }
}
