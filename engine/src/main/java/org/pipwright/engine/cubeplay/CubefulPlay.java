package org.pipwright.engine.cubeplay;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Grade;

/**
 * One play among others, by its worth with the cube.
 *
 * @param play the play
 * @param outcomes the six chances after it, for the side that plays, with both sides playing for cubeless points
 * @param value what it leaves the side that plays: points per unit of the cube, or the chance to win the match
 * @param cost value less that of the best play; 0 for the best, negative for all worse ones
 * @param points the cost in points per unit of the cube; in a match the cost divided by half of the difference between
 *     winning and losing a single game at the present cube (common practice, no source)
 * @param lookahead future rolls averaged over
 * @param exact whether the value comes from an exact table
 */
public record CubefulPlay(
        Play play, Outcomes outcomes, double value, double cost, double points, int lookahead, boolean exact) {
    /**
     * The cost in a word.
     *
     * @return the grade of {@link #points()}
     */
    public Grade grade() {
        return Grade.ofCost(points);
    }
}
