package org.pipwright.engine.play;

import java.io.Serializable;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.position.Planes;

/**
 * One checker moved by one die.
 *
 * @param from own place it leaves, 1 to 25 (25 is the bar)
 * @param to own place it reaches, 0 to from - 1 (0 is borne off)
 * @param hit whether it hits an opponent's checker there
 */
@PublicApi
public record Step(int from, int to, boolean hit) implements Serializable {
    /**
     * Checks the places.
     *
     * @param from own place it leaves, 1 to 25 (25 is the bar)
     * @param to own place it reaches, 0 to from - 1 (0 is borne off)
     * @param hit whether it hits an opponent's checker there
     * @throws IllegalArgumentException if no die can do that
     */
    public Step {
        if (from > Planes.BAR || to < Planes.OFF || from <= to || hit && to == Planes.OFF) {
            throw new IllegalArgumentException("no step from " + from + " to " + to + (hit ? " with a hit" : ""));
        }
    }
}
