package org.pipwright.engine.search;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;

/** Makes the columns of one thread's search, each once. Terms for equal stakes have to be equal. */
final class ColumnSet {
    private final ChanceCache cache;
    private final Map<Key, Columns> known = new HashMap<>();

    /** What tells columns apart. */
    private record Key(Stakes stakes, List<CubeState> cubes) {}

    /** None yet; the cache gives them their numbers, which are the same for all threads that share it. */
    ColumnSet(ChanceCache cache) {
        this.cache = cache;
    }

    Columns of(CubeTerms terms, List<CubeState> cubes) {
        Key key = new Key(terms.stakes(), Columns.inOrder(terms, cubes));
        Columns columns = known.get(key);
        if (columns == null) {
            columns = new Columns(cache.number(key), terms, key.cubes, this);
            known.put(key, columns);
        }
        return columns;
    }
}
