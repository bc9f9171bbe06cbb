package org.pipwright.training.run;

import java.util.function.BooleanSupplier;
import org.pipwright.engine.network.Model;

/** Who plays the games of rounds. */
interface Players {
    /**
     * Games that follow each other.
     *
     * @param model the net that plays them
     * @param first number of the first one
     * @param games how many
     * @param lambda of TD(lambda)
     */
    record Wanted(Model model, long first, int games, float lambda) {}

    /** Plays them; null if told to stop before the last. */
    Round play(Wanted wanted, BooleanSupplier stop);

    /** Whether they play while this machine's threads do something else. */
    boolean elsewhere();
}
