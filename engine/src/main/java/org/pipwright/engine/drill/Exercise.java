package org.pipwright.engine.drill;

import org.pipwright.engine.position.Position;

/** An exercise with its answer. */
public sealed interface Exercise permits PlayExercise, CubeExercise {
    /**
     * The game it was taken from.
     *
     * @return its number, from 0
     */
    long game();

    /**
     * Where it comes up.
     *
     * @return the position, seen from the side on roll
     */
    Position position();

    /**
     * The cost of the weaker player's choice.
     *
     * @return points per game, negative
     */
    double cost();

    /**
     * By how much the answer is better than the second best choice.
     *
     * @return points per game, positive
     */
    double margin();
}
