package org.pipwright.training.run;

import java.io.Serializable;
import org.pipwright.training.selfplay.Samples;

/**
 * A game of a round.
 *
 * @param samples what is to be learned from it
 * @param outcome six chances of the side that began, as the game ended
 * @param turns rolls of both sides
 */
record PlayedGame(Samples samples, float[] outcome, int turns) implements Serializable {
    private static final long serialVersionUID = 1;
}
