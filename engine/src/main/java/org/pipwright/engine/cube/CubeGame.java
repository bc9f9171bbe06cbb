package org.pipwright.engine.cube;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import org.pipwright.engine.rules.GameResult;

/**
 * The cube's side of one game: whose turn it is, what that side may do with the cube, and what the game comes to. The
 * checkers move elsewhere; this is told of rolls only through {@link #played()} and {@link #finish(GameResult)}.
 *
 * <p>Before each roll but the first the side on roll may double if its stakes and the cube allow; the opponent then
 * takes, passes or, where agreed, beavers. The first roll of a game is part of choosing who starts, so nobody can double
 * before it.
 */
public final class CubeGame {
    private static final Set<CubeAction> MUST_ROLL = Set.of(CubeAction.ROLL);
    private static final Set<CubeAction> MAY_DOUBLE = ordered(CubeAction.ROLL, CubeAction.DOUBLE);
    private static final Set<CubeAction> MAY_TAKE = ordered(CubeAction.TAKE, CubeAction.PASS);
    private static final Set<CubeAction> MAY_BEAVER = ordered(CubeAction.TAKE, CubeAction.PASS, CubeAction.BEAVER);

    private enum Phase {
        BEFORE_ROLL,
        OFFERED,
        ROLLED,
        OVER
    }

    private Stakes stakes;
    private CubeState cube = CubeState.START;
    private Phase phase = Phase.ROLLED;
    private boolean firstOnRoll = true;
    private int points;
    private boolean passed;

    /** Error lines list them in the order of the enum. */
    private static Set<CubeAction> ordered(CubeAction first, CubeAction... others) {
        return Collections.unmodifiableSet(EnumSet.of(first, others));
    }

    /**
     * A game whose first roll has just been thrown.
     *
     * @param stakes what it is played for, seen from the first player, who is on roll
     */
    public CubeGame(Stakes stakes) {
        this.stakes = stakes;
    }

    /**
     * A game that has come to a point before a roll.
     *
     * @param stakes what it is played for, seen from the first player, who is on roll
     * @param cube the cube, seen from the first player
     */
    public CubeGame(Stakes stakes, CubeState cube) {
        this.stakes = stakes;
        this.cube = cube;
        phase = Phase.BEFORE_ROLL;
    }

    /**
     * What the side that has to decide may do with the cube.
     *
     * @return the actions of the side on roll before its roll, or of its opponent when a double is offered; empty when
     *     checkers are to be moved or the game is over
     */
    public Set<CubeAction> actions() {
        switch (phase) {
            case BEFORE_ROLL:
                return stakes.mayDouble(cube) ? MAY_DOUBLE : MUST_ROLL;
            case OFFERED:
                return stakes.mayBeaver(cube) ? MAY_BEAVER : MAY_TAKE;
            default:
                return Set.of();
        }
    }

    /**
     * Does one of {@link #actions()}.
     *
     * @param action the action
     * @throws IllegalArgumentException if it is not among them
     */
    public void act(CubeAction action) {
        if (!actions().contains(action)) {
            throw new IllegalArgumentException(
                    action + " is not allowed here: the choice is " + actions() + " with the cube " + cube);
        }
        switch (action) {
            case DOUBLE:
                phase = Phase.OFFERED;
                return;
            case PASS:
                passed = true;
                end(cube.value());
                return;
            case TAKE:
                cube = cube.taken();
                break;
            case BEAVER:
                cube = cube.beavered();
                break;
            default:
                break;
        }
        phase = Phase.ROLLED;
    }

    /** The roll has been played and the game goes on: the other side is on roll. */
    public void played() {
        require(Phase.ROLLED);
        cube = cube.swapped();
        stakes = stakes.swapped();
        firstOnRoll = !firstOnRoll;
        phase = Phase.BEFORE_ROLL;
    }

    /**
     * The side on roll has borne off its last checker.
     *
     * @param result what the other side loses
     */
    public void finish(GameResult result) {
        require(Phase.ROLLED);
        end(stakes.points(result, cube));
    }

    /** Only the side on roll ever wins: by its last checker or by a pass. */
    private void end(int worth) {
        points = firstOnRoll ? worth : -worth;
        phase = Phase.OVER;
    }

    private void require(Phase wanted) {
        if (phase != wanted) {
            throw new IllegalStateException("the game is at " + phase + ", not at " + wanted);
        }
    }

    /**
     * Whether the game has ended.
     *
     * @return true after a pass or {@link #finish(GameResult)}
     */
    public boolean over() {
        return phase == Phase.OVER;
    }

    /**
     * Whether the game has ended with a pass.
     *
     * @return false if it goes on or was played to its end
     */
    public boolean passed() {
        return passed;
    }

    /**
     * Whether the first player is on roll, or was when the game ended.
     *
     * @return false if it is the second
     */
    public boolean firstOnRoll() {
        return firstOnRoll;
    }

    /**
     * The cube.
     *
     * @return seen from the side on roll
     */
    public CubeState cube() {
        return cube;
    }

    /**
     * The stakes.
     *
     * @return seen from the side on roll
     */
    public Stakes stakes() {
        return stakes;
    }

    /**
     * What the game has come to.
     *
     * @return points of the first player, negative if the second won; 0 while the game goes on
     */
    public int points() {
        return points;
    }
}
