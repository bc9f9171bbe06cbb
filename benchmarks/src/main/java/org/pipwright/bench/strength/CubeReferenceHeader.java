package org.pipwright.bench.strength;

import java.util.List;

/**
 * Where references for the cube come from.
 *
 * @param kind always {@value #KIND}
 * @param players who played the games that the decisions come from
 * @param net the net that judged which decisions are close and played them out, with the exact tables asked first
 * @param netSha256 SHA-256 of its weights
 * @param seed of the dice: of the games that decisions come from, and, plus the number of the decision, of those that play
 *     it out
 * @param each decisions of each regime
 * @param within actions this close to each other make a decision, in points
 * @param trials games of rolling and of a double that is taken, played to their end without lookahead, luck taken off
 */
record CubeReferenceHeader(
        String kind,
        List<String> players,
        String net,
        String netSha256,
        long seed,
        int each,
        double within,
        int trials) {
    static final String KIND = "pipwright cube reference 1";
}
