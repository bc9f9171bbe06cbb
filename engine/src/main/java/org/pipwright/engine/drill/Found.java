package org.pipwright.engine.drill;

import java.io.Serializable;
import java.util.List;

/**
 * An exercise found in a game.
 *
 * @param exercise the exercise
 * @param kinds of what kinds the game's exercises were at each look, in order, those that came to nothing too; the last is
 *     this exercise's own
 */
record Found(Exercise exercise, List<Kind> kinds) implements Serializable {
    Kind kind() {
        return kinds.get(kinds.size() - 1);
    }
}
