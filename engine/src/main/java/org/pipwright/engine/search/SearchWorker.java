package org.pipwright.engine.search;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;

/**
 * What one thread searches with.
 *
 * @param search a search of its own
 * @param terms how the cube is judged under given stakes, seen from the side on roll
 */
record SearchWorker(Lookahead search, Function<Stakes, CubeTerms> terms) {
    Columns columns(Cubes cubes) {
        return cubes.states().isEmpty() ? Columns.NONE : search.columns(terms.apply(cubes.stakes()), cubes.states());
    }
}
