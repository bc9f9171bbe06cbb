package org.pipwright.engine.explain;

import java.io.Serializable;
import org.pipwright.engine.cube.GammonValues;

/** Which causes can be put into words: who chooses by the main reason should choose by the one that a reader is told. */
@FunctionalInterface
public interface Telling extends Serializable {
    /** Whatever counts can be told. */
    Telling EVERYTHING = (best, rival, gammons, cause) -> true;

    /**
     * Whether there is something to say about a cause.
     *
     * @param best the better play
     * @param rival the weaker one, of the same roll
     * @param gammons what gammons are worth under the stakes
     * @param cause why the weaker one is weaker, or what speaks for it
     * @return false if the two show no difference that words could name
     */
    boolean tells(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons, Cause cause);
}
