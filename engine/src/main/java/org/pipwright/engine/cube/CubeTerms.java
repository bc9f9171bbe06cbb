package org.pipwright.engine.cube;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
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
     * What is played for.
     *
     * @return the stakes, seen from the side on roll
     */
    Stakes stakes();

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
     * The values of the cube actions of a position, given what it is worth to roll there.
     *
     * @param cube the cube, seen from the side on roll
     * @param rolling what rolling is worth with each of {@link Stakes#cubesToRollWith}, per unit of that cube
     * @return values to the side on roll
     */
    default CubeValues values(CubeState cube, ToDoubleFunction<CubeState> rolling) {
        double roll = rolling.applyAsDouble(cube);
        double pass = won(GameResult.SINGLE, cube);
        if (!stakes().mayDouble(cube)) {
            return new CubeValues(false, false, roll, roll, pass, roll);
        }
        double take = ofTaken(rolling.applyAsDouble(cube.taken()));
        boolean mayBeaver = stakes().mayBeaver(cube);
        double beaver = mayBeaver ? ofTaken(ofTaken(rolling.applyAsDouble(cube.beavered()))) : take;
        return new CubeValues(true, mayBeaver, roll, take, pass, beaver);
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
     * Told where the plays of a roll lead before the first of these positions is asked about, so that what they have in
     * common is worked out once. Changes no value.
     *
     * @param planes the positions side by side, each as {@link Planes} says
     * @param count their number
     */
    default void expect(int[] planes, int count) {}

    /**
     * {@link #known} for several cubes at once, for hot loops.
     *
     * @param planes array that holds an unfinished position
     * @param at index of its first plane
     * @param cubes cubes, seen from the side on roll
     * @param out where to write a value a cube
     * @return whether they are known; if not, what was written means nothing
     */
    default boolean known(int[] planes, int at, CubeState[] cubes, double[] out) {
        Position position = Position.ofPlanes(planes, at);
        for (int i = 0; i < cubes.length; i++) {
            OptionalDouble value = known(position, cubes[i]);
            if (value.isEmpty()) {
                return false;
            }
            out[i] = value.getAsDouble();
        }
        return true;
    }

    /**
     * What it is worth to roll with each of several cubes, by the model and as quickly as possible: {@link
     * CubeValues#noDouble()} of {@link #values}, for hot loops.
     *
     * @param planes array that holds an unfinished position
     * @param at index of its first plane
     * @param chances array that holds its six chances
     * @param chancesAt index of the first of them
     * @param cubes cubes, seen from the side on roll
     * @param out where to write a value a cube
     */
    default void rolling(int[] planes, int at, float[] chances, int chancesAt, CubeState[] cubes, double[] out) {
        Position position = Position.ofPlanes(planes, at);
        Outcomes outcomes = Outcomes.of(chances, chancesAt);
        for (int i = 0; i < cubes.length; i++) {
            out[i] = values(position, outcomes, cubes[i]).noDouble();
        }
    }

    /**
     * A cube that stands for others: with either, a position is worth the same per unit of the cube, and the same can
     * happen next.
     *
     * @param cube a cube, seen from the side on roll
     * @return the cube that stands for it; its own for most
     */
    default CubeState alike(CubeState cube) {
        return cube;
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
