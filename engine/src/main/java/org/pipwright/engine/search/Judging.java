package org.pipwright.engine.search;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;

/** Makes what threads judge with, on whichever machine they are. All that it makes judges alike. */
public interface Judging {
    /**
     * What one thread judges positions with.
     *
     * @return a fresh one
     */
    Judgement judgement();

    /**
     * What one thread judges stakes with a cube by.
     *
     * @return fresh terms of any stakes, seen from the side on roll
     */
    Function<Stakes, CubeTerms> terms();
}
