package org.pipwright.engine.drill;

import java.util.Optional;
import org.pipwright.engine.roll.Dice;

/** Makes questions of moments. Serves one thread. */
interface Examiner {
    /**
     * Looks at a moment of a game in which the theme comes up.
     *
     * @param moment the moment
     * @param game number of the game
     * @param choices for choices left to chance
     * @param promises told of the kind of exercise at each look; if it is not wanted, there is none
     * @return a question that is difficult and clear enough; empty if there is none in it
     */
    Optional<Found> question(Moment moment, long game, Dice choices, Promises promises);
}
