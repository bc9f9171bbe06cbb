package org.pipwright.engine.cubeplay;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;

/**
 * Makes terms for stakes and remembers them, so that what they have computed is used again. Serves one thread. Terms of a
 * match score may come to some megabytes, so those not asked for longest are forgotten.
 */
public final class TermsByStakes implements Function<Stakes, CubeTerms> {
    private static final int MAX = 256;

    private final Function<Stakes, CubeTerms> maker;
    private final Map<Stakes, CubeTerms> known = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Stakes, CubeTerms> eldest) {
            return size() > MAX;
        }
    };

    /**
     * Remembers nothing yet.
     *
     * @param maker makes terms, seen from the side the stakes are seen from
     */
    public TermsByStakes(Function<Stakes, CubeTerms> maker) {
        this.maker = maker;
    }

    @Override
    public CubeTerms apply(Stakes stakes) {
        CubeTerms found = known.get(stakes);
        if (found == null) {
            found = maker.apply(stakes);
            known.put(stakes, found);
            known.put(stakes.swapped(), found.swapped());
        }
        return found;
    }
}
