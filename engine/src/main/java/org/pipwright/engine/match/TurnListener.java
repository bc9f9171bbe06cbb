package org.pipwright.engine.match;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Roll;

/** Told of every turn of a game as it is played. */
@FunctionalInterface
public interface TurnListener {
    /** A listener that does nothing. */
    TurnListener NONE = (planes, roll, legal, chosen) -> {};

    /**
     * A play has been chosen.
     *
     * @param planes the position before the play, the side on roll first; valid during the call only
     * @param roll the roll
     * @param legal the results of the roll; valid during the call only
     * @param chosen index of the chosen one
     */
    void turn(int[] planes, Roll roll, PlayGenerator legal, int chosen);
}
