package org.pipwright.engine.cube;

import java.io.Serializable;
import java.util.EnumSet;
import java.util.Set;
import org.pipwright.engine.PublicApi;

/**
 * What the side on roll gets from each action with the cube, before it rolls, and what follows for both sides. All values
 * are to the side on roll, in one unit: points per unit of the present cube, or the chance to win the match.
 *
 * @param mayDouble whether the side on roll may double; if not, only {@code noDouble} is a choice
 * @param mayBeaver whether the opponent may answer with a beaver
 * @param noDouble value of rolling without doubling now
 * @param doubleTake value of a double that is taken
 * @param doublePass value of a double that is passed
 * @param doubleBeaver value of a double that is beavered; equal to {@code doubleTake} where beavers are not allowed
 */
@PublicApi
public record CubeValues(
        boolean mayDouble,
        boolean mayBeaver,
        double noDouble,
        double doubleTake,
        double doublePass,
        double doubleBeaver)
        implements Serializable {

    /** Values closer than this count as equal: rounding of exact tables and of models. */
    private static final double EQUAL = 1e-11;

    /**
     * What the opponent's best answer to a double leaves the side on roll.
     *
     * @return the least of the answers' values
     */
    public double doubled() {
        double least = Math.min(doubleTake, doublePass);
        return mayBeaver ? Math.min(least, doubleBeaver) : least;
    }

    /**
     * Value of the right action.
     *
     * @return the better of rolling and, if allowed, doubling
     */
    public double best() {
        return mayDouble ? Math.max(noDouble, doubled()) : noDouble;
    }

    /**
     * Whether doubling is right.
     *
     * @return true if it is allowed and better than rolling, or as good
     */
    public boolean shouldDouble() {
        return mayDouble && doubled() >= noDouble - EQUAL;
    }

    /**
     * Whether doubling and rolling are equally good.
     *
     * @return true if both are right
     */
    public boolean optional() {
        return mayDouble && Math.abs(doubled() - noDouble) <= EQUAL;
    }

    /**
     * Whether the position is too good to double: playing on is worth more than the points of a pass.
     *
     * @return true if a double would be passed and rolling is worth more than that pass
     */
    public boolean tooGood() {
        return mayDouble && answer() == CubeAction.PASS && !shouldDouble();
    }

    /**
     * The opponent's right answer to a double; a take where taking and passing are equal.
     *
     * @return TAKE, PASS or BEAVER
     */
    public CubeAction answer() {
        if (mayBeaver && doubleBeaver < Math.min(doubleTake, doublePass) - EQUAL) {
            return CubeAction.BEAVER;
        }
        return doubleTake <= doublePass + EQUAL ? CubeAction.TAKE : CubeAction.PASS;
    }

    /**
     * The choices this position gives to either side.
     *
     * @return ROLL, and where doubling is allowed DOUBLE and the answers to it
     */
    public Set<CubeAction> choices() {
        if (!mayDouble) {
            return EnumSet.of(CubeAction.ROLL);
        }
        Set<CubeAction> all = EnumSet.of(CubeAction.ROLL, CubeAction.DOUBLE, CubeAction.TAKE, CubeAction.PASS);
        if (mayBeaver) {
            all.add(CubeAction.BEAVER);
        }
        return all;
    }

    /**
     * The cost of an action: what it is worth to the side that takes it less what its best action is, with right answers.
     *
     * @param action one of {@link #choices()}
     * @return at most 0; 0 for a right action
     * @throws IllegalArgumentException if the action is no choice here
     */
    public double cost(CubeAction action) {
        if (!choices().contains(action)) {
            throw new IllegalArgumentException(action + " is no choice here");
        }
        switch (action) {
            case ROLL:
                return noDouble - best();
            case DOUBLE:
                return doubled() - best();
            case TAKE:
                return doubled() - doubleTake;
            case PASS:
                return doubled() - doublePass;
            default:
                return doubled() - doubleBeaver;
        }
    }
}
