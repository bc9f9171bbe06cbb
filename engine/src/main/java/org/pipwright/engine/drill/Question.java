package org.pipwright.engine.drill;

import org.pipwright.engine.position.Position;

/** An exercise with its answer. */
public sealed interface Question permits PlayQuestion, CubeQuestion {
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
     * What the weaker player's choice gives away.
     *
     * @return points per game, positive
     */
    double cost();

    /**
     * What the second best choice gives away: by how much the answer is clear.
     *
     * @return points per game, positive
     */
    double margin();
}
