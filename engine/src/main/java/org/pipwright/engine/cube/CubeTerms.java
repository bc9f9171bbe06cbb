package org.pipwright.engine.cube;

import java.util.Optional;
import java.util.OptionalDouble;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * All that is needed to judge the cube in one game: what its stakes allow, and what positions are worth with the cube. Seen
 * from the side on roll; {@link #swapped()} is the other side's view. May remember what it has computed, so an instance
 * serves one thread.
 */
public interface CubeTerms {
    /** Differences of values below this come from arithmetic: match tables have six digits. */
    double NOISE = 1e-9;

    /**
     * The values of the cube actions at any chance to win, by a model.
     *
     * @param position an unfinished position
     * @param shares how its wins and losses split
     * @param cube the cube, seen from the side on roll
     * @return values to the side on roll
     */
    CubeCurves curves(Position position, GammonShares shares, CubeState cube);

    /**
     * Exact values where they are known.
     *
     * @param position an unfinished position
     * @param cube the cube, seen from the side on roll
     * @return values to the side on roll; empty if they are not known
     */
    Optional<CubeValues> exact(Position position, CubeState cube);

    /**
     * The best values at hand, as quickly as possible.
     *
     * @param position an unfinished position
     * @param outcomes its six chances
     * @param cube the cube, seen from the side on roll
     * @return values to the side on roll
     */
    default CubeValues values(Position position, Outcomes outcomes, CubeState cube) {
        return exact(position, cube).orElseGet(() -> curves(position, GammonShares.of(outcomes), cube)
                .at(outcomes.win()));
    }

    /**
     * The exact value of a position with the right cube action, where it is known.
     *
     * @param position an unfinished position
     * @param cube the cube, seen from the side on roll
     * @return value to the side on roll; empty if it is not known
     */
    default OptionalDouble known(Position position, CubeState cube) {
        return exact(position, cube).stream().mapToDouble(CubeValues::best).findFirst();
    }

    /**
     * What a finished game is worth in the end.
     *
     * @param points of this side with the cube, negative if it has lost them
     * @return points in money play, else the chance to win the match
     */
    double ended(int points);

    /**
     * The value of a position with the right cube action, as quickly as possible.
     *
     * @param position an unfinished position
     * @param outcomes its six chances
     * @param cube the cube, seen from the side on roll
     * @return value to the side on roll
     */
    default double best(Position position, Outcomes outcomes, CubeState cube) {
        return values(position, outcomes, cube).best();
    }

    /**
     * What this side gets when it has won the game.
     *
     * @param result what the loser loses
     * @param cube the cube at the end, seen from this side
     * @return the value in the unit of this cube
     */
    double won(GameResult result, CubeState cube);

    /**
     * What a point is worth: half of what lies between winning and losing a single game with the cube as it is. In money play
     * 1 by definition; in a match the usual way to compare its errors with those of money play (common practice, no source).
     *
     * @param cube the cube, seen from this side
     * @return in the unit of this cube
     */
    default double point(CubeState cube) {
        double lost = toOther(swapped().won(GameResult.SINGLE, cube.swapped()));
        return (won(GameResult.SINGLE, cube) - lost) / 2;
    }

    /**
     * What one side gets when the other gets something.
     *
     * @param value a value to one side
     * @return the value to the other
     */
    double toOther(double value);

    /**
     * From the unit of a cube that has been turned to that of the cube before.
     *
     * @param value a value per unit of the turned cube
     * @return the same value per unit of the present cube
     */
    double ofTaken(double value);

    /**
     * From the unit of a cube to what counts in the end: points, or the chance to win the match.
     *
     * @param value a value per unit of the cube
     * @param cube the cube
     * @return points of a game in money play; the value itself in a match
     */
    double inAll(double value, CubeState cube);

    /**
     * The same terms for the other side.
     *
     * @return the other side's view
     */
    CubeTerms swapped();
}
