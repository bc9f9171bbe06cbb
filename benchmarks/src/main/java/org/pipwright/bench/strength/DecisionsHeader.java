package org.pipwright.bench.strength;

import java.util.List;

/**
 * Where decisions come from.
 *
 * @param kind always {@value #KIND}
 * @param seed of the games' dice and of the choice among their decisions
 * @param players who played the games, as names
 * @param judge the net that says which plays are sensible
 * @param judgeSha256 SHA-256 of its weights
 * @param within plays this close to the judge's best, in points per game, are sensible
 * @param each decisions of each regime
 * @param games games played to find them
 * @param disagreeing lookahead with which the judge chooses another play than without in all of them; null if any were
 *     taken
 */
public record DecisionsHeader(
        String kind,
        long seed,
        List<String> players,
        String judge,
        String judgeSha256,
        double within,
        int each,
        int games,
        Integer disagreeing) {
    static final String KIND = "pipwright decisions 1";
}
