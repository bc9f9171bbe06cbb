package org.pipwright.engine.drill;

import java.io.Serializable;
import org.pipwright.engine.explain.Telling;

/**
 * What decides which exercises are found in games of the drill's own.
 *
 * @param theme what they are about
 * @param count how many are wanted, at least 1
 * @param seed of the games they are taken from
 * @param clarity what makes a decision worth asking about; the mistake is the weaker player's
 * @param apart positions with fewer checkers than this on other places are nearly equal, and only the first of them is
 *     used; at least 1
 * @param mostGames number of games after which the search is given up
 * @param telling which reasons can be told: a theme has exercises whose main reason, of these, is what it is about
 */
public record DrillSettings(
        Theme theme, int count, long seed, Clarity clarity, int apart, int mostGames, Telling telling)
        implements Serializable {
    /**
     * Checks the ranges.
     *
     * @param theme what they are about
     * @param count at least 1
     * @param seed any
     * @param clarity what makes a decision worth asking about
     * @param apart at least 1
     * @param mostGames at least 1
     * @param telling which reasons can be told
     * @throws IllegalArgumentException if one is out of range
     */
    public DrillSettings {
        if (count < 1 || apart < 1 || mostGames < 1) {
            throw new IllegalArgumentException("a drill needs at least 1 position, 1 checker apart and 1 game: not "
                    + count + ", " + apart + " and " + mostGames);
        }
    }

    /**
     * Settings for a reader who can be told every reason.
     *
     * @param theme what they are about
     * @param count at least 1
     * @param seed any
     * @param clarity what makes a decision worth asking about
     * @param apart at least 1
     * @param mostGames at least 1
     * @throws IllegalArgumentException if one is out of range
     */
    public DrillSettings(Theme theme, int count, long seed, Clarity clarity, int apart, int mostGames) {
        this(theme, count, seed, clarity, apart, mostGames, Telling.EVERYTHING);
    }
}
