package org.pipwright.engine.cube;

import java.util.Optional;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.rules.GameResult;

/**
 * What a gammon adds to a single game, as a share of the difference between winning and losing a single game, with the
 * cube out of further use (common practice, no source): 0.5 in money play, 0 where gammons do not count, 1 and more
 * where a gammon is the whole point.
 *
 * @param mine of the side on roll
 * @param theirs of the opponent
 */
@PublicApi
public record GammonValues(double mine, double theirs) {
    /**
     * The gammon values of a game.
     *
     * @param terms what is played for, seen from the side on roll
     * @param cube the cube at the end, seen from the side on roll
     * @return both sides' values; empty if a single game decides nothing, as by a table rounded to few digits
     */
    public static Optional<GammonValues> of(CubeTerms terms, CubeState cube) {
        double won = terms.won(GameResult.SINGLE, cube);
        double lost = lost(terms, GameResult.SINGLE, cube);
        double between = won - lost;
        if (between <= CubeTerms.NOISE) {
            return Optional.empty();
        }
        return Optional.of(new GammonValues(
                (terms.won(GameResult.GAMMON, cube) - won) / between,
                (lost - lost(terms, GameResult.GAMMON, cube)) / between));
    }

    private static double lost(CubeTerms terms, GameResult result, CubeState cube) {
        return terms.toOther(terms.swapped().won(result, cube.swapped()));
    }
}
