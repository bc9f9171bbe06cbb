package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Chances;

/** What a side plays for: turns its six chances into one number, the higher the better. Shared by threads. */
@FunctionalInterface
public interface Objective {
    /** Points per game without a cube, gammons and backgammons at their face value: -3 to 3. */
    Objective CUBELESS = Chances::equity;

    /**
     * The worth of six chances.
     *
     * @param chances array that holds them, in the order of {@link org.pipwright.engine.evaluation.Outcomes}
     * @param at index of the first of six
     * @return what the side whose chances they are makes largest
     */
    float worth(float[] chances, int at);
}
