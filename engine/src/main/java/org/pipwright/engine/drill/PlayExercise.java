package org.pipwright.engine.drill;

import java.util.List;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Which play is best?
 *
 * @param origin where it was found
 * @param asked the position and the roll, with what is played for
 * @param ranking every legal play, best first; the best five at least and the weaker one with the full lookahead
 * @param weak the weaker play: what a weaker player chose, what was played, or the second best
 */
public record PlayExercise(Origin origin, Question asked, List<PlayVerdict> ranking, PlayVerdict weak)
        implements Exercise {
    /**
     * Copies the ranking.
     *
     * @param origin where it was found
     * @param asked the position and the roll
     * @param ranking every legal play, at least two
     * @param weak one of them
     */
    public PlayExercise {
        ranking = List.copyOf(ranking);
        if (ranking.size() < 2 || !ranking.contains(weak)) {
            throw new IllegalArgumentException("a question needs two plays, one of them the weaker one");
        }
    }

    @Override
    public Position position() {
        return asked.position();
    }

    /**
     * The roll.
     *
     * @return what is to be played
     */
    public Roll roll() {
        return asked.roll();
    }

    @Override
    public Stakes stakes() {
        return asked.stakes();
    }

    @Override
    public CubeState cube() {
        return asked.cube();
    }

    /**
     * The answer.
     *
     * @return the best play
     */
    public PlayVerdict best() {
        return ranking.get(0);
    }

    @Override
    public double cost() {
        return weak.points();
    }

    @Override
    public double margin() {
        return -ranking.get(1).points();
    }
}
