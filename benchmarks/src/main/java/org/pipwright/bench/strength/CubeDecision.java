package org.pipwright.bench.strength;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.score.MatchScore;

/**
 * A decision about the cube before a roll, and its answer.
 *
 * @param id number in the file, from 1
 * @param regime its kind
 * @param position as text
 * @param away points to go, of the side on roll and of the other, as in 3,5; null for money with the Jacoby rule
 * @param cube what it shows; above 1 the side on roll owns it
 * @param game the players of the game it comes from, the side on roll first
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record CubeDecision(int id, Regime regime, String position, String away, int cube, String game) {
    /** What is asked about it. */
    Question question() {
        return Question.before(PositionText.parse(position)).with(stakes(), state());
    }

    private CubeState state() {
        return cube == 1 ? CubeState.START : new CubeState(cube, CubeOwner.ME);
    }

    private Stakes stakes() {
        if (away == null) {
            return new MoneyStakes(true, false);
        }
        String[] parts = away.split(",");
        return new MatchStakes(new MatchScore(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]), false));
    }
}
