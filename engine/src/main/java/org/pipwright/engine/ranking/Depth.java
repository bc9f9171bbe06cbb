package org.pipwright.engine.ranking;

import java.io.Serializable;
import java.util.Comparator;
import org.pipwright.engine.PublicApi;

/**
 * How deeply something was evaluated, and how far off chance may have thrown the answer. One ranking may mix depths, so
 * each line carries its own.
 *
 * @param lookahead number of future rolls averaged over: 0 is the evaluator itself, 1 averages the 21 rolls that follow;
 *     with games, that of their checker play
 * @param games number of games played out from there, 0 if none were
 * @param error standard error of the equity because of the dice of those games, in points per game; 0 without games
 */
@PublicApi
public record Depth(int lookahead, int games, double error) implements Serializable {
    /** Rollouts first, then by lookahead, deepest first. */
    public static final Comparator<Depth> DEEPEST_FIRST = Comparator.comparing((Depth depth) -> depth.games() == 0)
            .thenComparing(Depth::lookahead, Comparator.reverseOrder());

    /** The evaluator itself, nothing averaged. */
    public static final Depth STATIC = new Depth(0);

    /**
     * Checks the numbers.
     *
     * @param lookahead at least 0
     * @param games at least 0
     * @param error at least 0
     * @throws IllegalArgumentException if one is negative, or there is an error without games
     */
    public Depth {
        if (lookahead < 0) {
            throw new IllegalArgumentException("a lookahead is at least 0, not " + lookahead);
        }
        if (games < 0 || !(error >= 0) || games == 0 && error > 0) {
            throw new IllegalArgumentException("a standard error of " + error + " from " + games + " games");
        }
    }

    /**
     * Lookahead without games.
     *
     * @param lookahead number of future rolls averaged over
     */
    public Depth(int lookahead) {
        this(lookahead, 0, 0);
    }

    /** The depth in words, as in {@code lookahead 0} or {@code 1296 games at lookahead 0}. */
    @Override
    public String toString() {
        return (games > 0 ? games + " games at " : "") + "lookahead " + lookahead;
    }
}
