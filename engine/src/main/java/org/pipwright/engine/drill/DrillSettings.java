package org.pipwright.engine.drill;

import org.pipwright.engine.judge.Effort;

/**
 * What decides which exercises are found.
 *
 * @param theme what they are about
 * @param count how many are wanted, at least 1
 * @param seed of the games they are taken from
 * @param cost what the weaker player's choice must give away at least, in points per game (in a match of the chance to
 *     win it, scaled as {@link CubeExercise#unit()} says); more than 0
 * @param margin what the second best choice must give away at least, in the same unit; more than 0
 * @param lookahead future rolls that the judge averages over, 0 to 3
 * @param simulateRaces whether races beyond the exact tables are simulated for the answer
 * @param apart positions with fewer checkers than this on other places are nearly equal, and only the first of them is
 *     used; at least 1
 * @param mostGames number of games after which the search is given up
 */
public record DrillSettings(
        Theme theme,
        int count,
        long seed,
        double cost,
        double margin,
        int lookahead,
        boolean simulateRaces,
        int apart,
        int mostGames) {
    /** Largest lookahead of a drill, which judges hundreds of positions for one question. */
    public static final int MAX_LOOKAHEAD = 3;

    /**
     * Checks the ranges.
     *
     * @param theme what they are about
     * @param count at least 1
     * @param seed any
     * @param cost more than 0
     * @param margin more than 0
     * @param lookahead 0 to {@value #MAX_LOOKAHEAD}
     * @param simulateRaces whether races are simulated
     * @param apart at least 1
     * @param mostGames at least 1
     * @throws IllegalArgumentException if one is out of range
     */
    public DrillSettings {
        if (count < 1 || apart < 1 || mostGames < 1) {
            throw new IllegalArgumentException("a drill needs at least 1 position, 1 checker apart and 1 game: not "
                    + count + ", " + apart + " and " + mostGames);
        }
        if (!(cost > 0 && margin > 0)) {
            throw new IllegalArgumentException(
                    "cost and margin are more than 0 points, not " + cost + " and " + margin);
        }
        if (lookahead < 0 || lookahead > MAX_LOOKAHEAD) {
            throw new IllegalArgumentException("lookahead " + lookahead + ": use 0 to " + MAX_LOOKAHEAD);
        }
    }

    /** How hard the judge thinks about the answer. */
    Effort effort() {
        return Effort.lookahead(lookahead).withRaces(simulateRaces);
    }
}
