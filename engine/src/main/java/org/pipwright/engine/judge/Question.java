package org.pipwright.engine.judge;

import java.io.Serializable;
import java.util.List;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;

/**
 * What a judge is asked: which play of a roll is best, or what a position is worth before the roll and what to do with the
 * cube. Immutable.
 *
 * @param position the position, seen from the side on roll
 * @param roll the roll that is played; null before the roll
 * @param stakes what is played for, seen from the side on roll; {@link CubelessStakes} leaves the cube out
 * @param cube the cube, seen from the side on roll; without a cube it stays as it is at the start
 * @param only the plays to compare with each other, if not all of the roll; else empty
 */
@PublicApi
public record Question(Position position, Roll roll, Stakes stakes, CubeState cube, List<Play> only)
        implements Serializable {
    /**
     * Checks the parts against each other.
     *
     * @param position unfinished where there is a roll or a cube
     * @param roll null before the roll
     * @param stakes what is played for
     * @param cube where the cube is
     * @param only plays of that position and roll, none to compare all
     * @throws IllegalArgumentException if the game is over, or a play is not one of this position and roll
     */
    public Question {
        only = List.copyOf(only);
        if (position.finished() && (roll != null || !(stakes instanceof CubelessStakes))) {
            throw new IllegalArgumentException("the game is over in this position: there is no roll and no double");
        }
        if (roll == null && !only.isEmpty()) {
            throw new IllegalArgumentException("plays without the roll they are plays of");
        }
        only.forEach(play -> Plays.to(position, roll, play.result()));
    }

    /**
     * What a position is worth before the roll, without a cube.
     *
     * @param position the position; it may be finished
     * @return the question
     */
    public static Question before(Position position) {
        return new Question(position, null, new CubelessStakes(), CubeState.START, List.of());
    }

    /**
     * Which play of a roll is best, without a cube.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @return the question
     * @throws IllegalArgumentException if the game is over
     */
    public static Question of(Position position, Roll roll) {
        return new Question(position, roll, new CubelessStakes(), CubeState.START, List.of());
    }

    /**
     * The same for other stakes and with a cube.
     *
     * @param other what is played for, seen from the side on roll
     * @param its where the cube is, seen from the side on roll
     * @return the question
     * @throws IllegalArgumentException if the game is over
     */
    public Question with(Stakes other, CubeState its) {
        return new Question(position, roll, other, its, only);
    }

    /**
     * The same with the cube where it is.
     *
     * @param its where the cube is, seen from the side on roll
     * @return the question
     */
    public Question with(CubeState its) {
        return with(stakes, its);
    }

    /**
     * The same in money play with the Jacoby rule and a centred cube.
     *
     * @return the question
     */
    public Question forMoney() {
        return with(MoneyStakes.USUAL, CubeState.START);
    }

    /**
     * The same in a match, not in the Crawford game, with a centred cube.
     *
     * @param mine points the side on roll needs, 1 to {@value MatchScore#LONGEST}
     * @param theirs points the opponent needs, 1 to {@value MatchScore#LONGEST}
     * @return the question
     * @throws IllegalArgumentException if there is no such score
     */
    public Question inMatch(int mine, int theirs) {
        return with(new MatchStakes(new MatchScore(mine, theirs, false)), CubeState.START);
    }

    /**
     * The same about some plays only, which are all looked at alike.
     *
     * @param plays plays of this position and roll; none for all
     * @return the question
     * @throws IllegalArgumentException if a play is not one of this position and roll
     */
    public Question only(List<Play> plays) {
        return new Question(position, roll, stakes, cube, plays);
    }

    /**
     * Whether a cube or a score counts.
     *
     * @return false if results are points of a game without a cube
     */
    public boolean cubeful() {
        return !(stakes instanceof CubelessStakes);
    }
}
