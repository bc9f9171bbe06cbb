package org.pipwright.engine.drill;

import java.util.Optional;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;

/**
 * A decision that may become an exercise: one that somebody has made, or one that is only asked about.
 *
 * @param origin where it was found
 * @param question the position, what is played for, and the roll if a play is asked for
 * @param answering without a roll, whether the opponent is asked for its answer to a double
 * @param played what the play that was made leads to, seen from the side that made it; empty where none was
 * @param done what was done with the cube; empty where nothing was
 */
public record Candidate(
        Origin origin, Question question, boolean answering, Optional<Position> played, Optional<CubeAction> done) {
    /**
     * A decision that is only asked about.
     *
     * @param origin where it was found
     * @param question with a roll, which play; without one and with a cube, whether to double
     * @return the candidate
     */
    public static Candidate asked(Origin origin, Question question) {
        return new Candidate(origin, question, false, Optional.empty(), Optional.empty());
    }

    /** Whether a play is asked for. */
    boolean play() {
        return question.roll() != null;
    }
}
