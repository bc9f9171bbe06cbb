package org.pipwright.engine.record;

import java.util.Locale;
import java.util.Set;
import java.util.function.IntFunction;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** Follows one game from its first roll and lets nothing happen that the rules forbid. */
public final class Referee {
    private final Heading heading;
    private final IntFunction<Stakes> stakes;
    private CubeGame cube;
    private Position position = Position.start();
    private int onRoll;
    private int points;
    private boolean over;

    /**
     * A game that has not begun.
     *
     * @param heading the players
     * @param stakes what is played for, seen from side 0 or 1
     */
    Referee(Heading heading, IntFunction<Stakes> stakes) {
        this.heading = heading;
        this.stakes = stakes;
    }

    /**
     * Whether the game has ended.
     *
     * @return true after the last checker, a pass or a resignation
     */
    public boolean over() {
        return over;
    }

    /**
     * What the game has come to.
     *
     * @return points of side 0, negative if side 1 won; 0 while the game goes on
     */
    public int points() {
        return points;
    }

    /**
     * The position before the next roll.
     *
     * @return seen from the side on roll
     */
    public Position position() {
        return position;
    }

    /**
     * What the cube shows.
     *
     * @return 1 before the first double
     */
    public int cubeValue() {
        return cube == null ? 1 : cube.cube().value();
    }

    /**
     * What may come next, in words.
     *
     * @return such as {@code Ada to roll or double}
     */
    public String expected() {
        if (over) {
            return "the game is over";
        }
        if (cube == null) {
            return "the first roll, by either player";
        }
        String name = heading.name(decides());
        if (!actions().contains(CubeAction.TAKE)) {
            return name + (actions().contains(CubeAction.DOUBLE) ? " to roll or double" : " to roll");
        }
        return name + (actions().contains(CubeAction.BEAVER) ? " to take, pass or beaver" : " to take or pass");
    }

    /** How the game stands for whoever has to go on with it. */
    Stand stand(int number, boolean matchOver) {
        boolean begun = cube != null;
        return new Stand(
                number,
                begun,
                over,
                matchOver,
                points,
                position,
                onRoll,
                begun && !over ? decides() : onRoll,
                begun && !over ? actions() : Set.of(),
                begun ? cube.cube() : CubeState.START,
                begun ? cube.stakes() : stakes.apply(0));
    }

    private Set<CubeAction> actions() {
        boolean idle = !heading.rules().cube() && cube.actions().contains(CubeAction.DOUBLE);
        return idle ? Set.of(CubeAction.ROLL) : cube.actions();
    }

    private int decides() {
        return actions().contains(CubeAction.TAKE) ? 1 - onRoll : onRoll;
    }

    /**
     * Checks that a side may roll, before its play is read.
     *
     * @param side 0 or 1
     * @param roll the dice
     * @throws IllegalEntryException if it may not
     */
    public void mayRoll(int side, Roll roll) {
        requireGoingOn();
        if (cube == null) {
            if (roll.isDouble()) {
                throw new IllegalEntryException(
                        "a game begins with two different dice, not " + roll + ": equal ones are thrown again");
            }
            return;
        }
        if (side != onRoll || actions().contains(CubeAction.TAKE)) {
            throw outOfTurn(side, "rolls");
        }
    }

    void turn(int side, Roll roll, Play play) {
        mayRoll(side, roll);
        if (cube == null) {
            onRoll = side;
            cube = new CubeGame(stakes.apply(side));
        } else if (actions().contains(CubeAction.ROLL)) {
            cube.act(CubeAction.ROLL);
        }
        if (!Plays.legal(position, roll).contains(play)) {
            throw new IllegalEntryException(play + " is not a play of " + roll + " here");
        }
        if (play.result().finished()) {
            GameResult result = GameResult.of(play.result());
            cube.finish(result);
            end(onRoll, cube.stakes().points(result, cube.cube()));
        } else {
            cube.played();
            onRoll = 1 - onRoll;
            position = play.next();
        }
    }

    void cube(int side, CubeAction action) {
        requireGoingOn();
        if (cube == null) {
            throw new IllegalEntryException("nobody can double before the first roll of a game");
        }
        if (side != decides()) {
            throw outOfTurn(side, word(action));
        }
        Set<CubeAction> allowed = actions();
        if (!allowed.contains(action)) {
            throw new IllegalEntryException(refusal(action, allowed));
        }
        int worth = cube.cube().value();
        cube.act(action);
        if (action == CubeAction.PASS) {
            end(onRoll, worth);
        }
    }

    private String refusal(CubeAction action, Set<CubeAction> allowed) {
        if (action == CubeAction.DOUBLE && !allowed.contains(CubeAction.TAKE)) {
            return "no double is allowed here: "
                    + (crawford()
                            ? "this is the Crawford game"
                            : heading.rules().cube() ? "the opponent owns the cube" : "the match is to 1 point");
        }
        return "there is nothing to " + action.name().toLowerCase(Locale.ROOT) + " here: expected " + expected();
    }

    private boolean crawford() {
        return cube.stakes() instanceof MatchStakes
                && ((MatchStakes) cube.stakes()).score().crawford();
    }

    void resign(int side, GameResult result) {
        requireGoingOn();
        if (cube == null) {
            throw new IllegalEntryException("nobody can resign before the first roll of a game");
        }
        if (actions().contains(CubeAction.TAKE)) {
            throw new IllegalEntryException("a double is answered before anybody resigns: expected " + expected());
        }
        end(1 - side, cube.stakes().points(result, cube.cube()));
    }

    private void end(int winner, int worth) {
        points = winner == 0 ? worth : -worth;
        over = true;
    }

    private void requireGoingOn() {
        if (over) {
            throw new IllegalEntryException("the game is over: begin the next one with a line 'game'");
        }
    }

    private IllegalEntryException outOfTurn(int side, String does) {
        return new IllegalEntryException(heading.name(side) + " " + does + " out of turn: expected " + expected());
    }

    static String word(CubeAction action) {
        return action == CubeAction.PASS ? "passes" : action.name().toLowerCase(Locale.ROOT) + "s";
    }
}
