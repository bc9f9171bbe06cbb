package org.pipwright.engine.search;

import java.io.Serializable;

/**
 * Which plays are worth a deeper look: those close to the best so far, and not too many of them.
 *
 * @param within how far behind the best a play may be, in points per game; at least 0, may be infinite
 * @param most how many plays are kept at most, at least 1
 */
public record Pruning(float within, int most) implements Serializable {
    /** Keeps every play. */
    public static final Pruning NONE = new Pruning(Float.POSITIVE_INFINITY, Integer.MAX_VALUE);

    /**
     * Checks the ranges.
     *
     * @param within points per game
     * @param most number of plays
     * @throws IllegalArgumentException if out of range
     */
    public Pruning {
        if (!(within >= 0) || most < 1) {
            throw new IllegalArgumentException(
                    "keep plays within 0 or more points, at least 1 of them: not " + within + " and " + most);
        }
    }
}
