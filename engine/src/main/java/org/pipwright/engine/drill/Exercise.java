package org.pipwright.engine.drill;

import java.io.Serializable;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.position.Position;

/** An exercise with its answer. */
public sealed interface Exercise extends Serializable permits PlayExercise, CubeExercise {
    /**
     * Where it was found.
     *
     * @return a game, a turn of a record or a line of a file
     */
    Origin origin();

    /**
     * Where it comes up.
     *
     * @return the position, seen from the side on roll
     */
    Position position();

    /**
     * What is played for.
     *
     * @return seen from the side on roll; {@link org.pipwright.engine.cube.CubelessStakes} where the cube is left out
     */
    Stakes stakes();

    /**
     * The cube before the decision.
     *
     * @return seen from the side on roll
     */
    CubeState cube();

    /**
     * The cost of the weaker choice.
     *
     * @return points per game, at most 0
     */
    double cost();

    /**
     * By how much the answer is better than the second best choice.
     *
     * @return points per game, at least 0
     */
    double margin();
}
