package org.pipwright.engine.cube;

import java.util.Optional;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * Take points and doubling windows that belong to a position. Most come from the model of its regime. Where its own values
 * are exact, the model's window could contradict them: it is left out then, but on the last roll and the last two, whose
 * windows are exact too.
 */
public final class CubeWindows {
    private CubeWindows() {}

    /**
     * The window of a position.
     *
     * @param terms what is played for, seen from the side on roll
     * @param position an unfinished position
     * @param shares how its wins and losses split
     * @param cube the cube, seen from the side on roll
     * @return the window; empty where the values are exact and more than two rolls may decide, and where the side on roll
     *     gains nothing by doubling, since it wins as much without
     */
    public static Optional<CubeWindow> of(CubeTerms terms, Position position, GammonShares shares, CubeState cube) {
        if (terms.ofTaken(terms.won(GameResult.SINGLE, cube.taken())) <= terms.won(GameResult.SINGLE, cube)) {
            return Optional.empty();
        }
        if (terms.exact(position, cube).isEmpty()) {
            return Optional.of(CubeWindow.of(terms.curves(position, shares, cube)));
        }
        return lastRolls(terms, position, cube).map(CubeWindow::of);
    }

    /**
     * Whether the opponent bears off its last checker with any roll, so that the side on roll wins now or never.
     *
     * @param position an unfinished position
     * @return true on a last roll
     */
    public static boolean lastRoll(Position position) {
        return LastRolls.of(position).opponentOff() == 1;
    }

    /** The exact curves of a position that one roll decides, or two. */
    static Optional<CubeCurves> lastRolls(CubeTerms terms, Position position, CubeState cube) {
        LastRolls rolls = LastRolls.of(position);
        if (rolls.opponentOff() == 1) {
            return Optional.of(win -> terms.values(cube, each -> rolled(terms, each, win)));
        }
        if (rolls.opponentOff() > 0 && rolls.offWithTwo()) {
            return Optional.of(win -> terms.values(cube, each -> twoRolls(terms, each, win, rolls.opponentOff())));
        }
        return Optional.empty();
    }

    /** A single game with a cube that nobody turns any more. */
    private static double rolled(CubeTerms terms, CubeState cube, double win) {
        double lost = terms.toOther(terms.swapped().won(GameResult.SINGLE, cube.swapped()));
        return lost + win * (terms.won(GameResult.SINGLE, cube) - lost);
    }

    /**
     * The same where the opponent has one roll, before which it may double, if the first roll of this side does not end the
     * game. How often that roll wins stays as it is in the position; the chance to win then says how often the first does.
     */
    private static double twoRolls(CubeTerms terms, CubeState cube, double win, double opponentOff) {
        double missed = (1 - win) / opponentOff;
        CubeTerms theirs = terms.swapped();
        double opponent = theirs.values(cube.swapped(), each -> rolled(theirs, each, opponentOff))
                .best();
        return (1 - missed) * terms.won(GameResult.SINGLE, cube) + missed * terms.toOther(opponent);
    }
}
