package org.pipwright.engine.drill;

import java.util.List;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.position.Position;

/**
 * Double or roll? Or, when doubled: take or pass?
 *
 * @param origin where it was found
 * @param position the position before the roll, seen from the side on roll, which is the side that doubles
 * @param cube the cube before the double, seen from the side on roll
 * @param stakes what is played for, seen from the side on roll
 * @param values values of the actions, to the side on roll
 * @param unit half of what there is between winning and losing a single game with the cube before the double: 1 point
 *     in money play, in a match some chance to win it. Costs are divided by it, so that they can be read as points
 *     (common practice, no source)
 * @param answering whether the opponent is asked for its answer to a double
 * @param weak the weaker choice
 */
public record CubeExercise(
        Origin origin,
        Position position,
        CubeState cube,
        Stakes stakes,
        CubeValues values,
        double unit,
        boolean answering,
        CubeAction weak)
        implements Exercise {
    /**
     * The actions to choose from.
     *
     * @return double and roll, or take and pass
     */
    public List<CubeAction> choices() {
        return choices(answering);
    }

    static List<CubeAction> choices(boolean answering) {
        return answering ? List.of(CubeAction.TAKE, CubeAction.PASS) : List.of(CubeAction.DOUBLE, CubeAction.ROLL);
    }

    /**
     * The answer.
     *
     * @return the right action
     */
    public CubeAction best() {
        return right(values, answering);
    }

    /**
     * The other choice.
     *
     * @return the action that is not the answer
     */
    public CubeAction worse() {
        return choices().get(choices().get(0) == best() ? 1 : 0);
    }

    CubeExercise withWeak(CubeAction other) {
        return new CubeExercise(origin, position, cube, stakes, values, unit, answering, other);
    }

    static CubeAction right(CubeValues values, boolean answering) {
        if (answering) {
            return values.answer();
        }
        return values.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL;
    }

    /**
     * The cost of an action.
     *
     * @param action one of {@link #choices()}
     * @return points per game, at most 0; 0 for the answer
     */
    public double cost(CubeAction action) {
        return values.cost(action) / unit;
    }

    @Override
    public double cost() {
        return cost(weak);
    }

    /** {@inheritDoc} Of two actions the worse one is the second best: this is what it costs. */
    @Override
    public double margin() {
        return -cost(worse());
    }
}
