package org.pipwright.engine.ranking;

/**
 * How deeply something was evaluated. One ranking may mix depths, so each line carries its own.
 *
 * @param lookahead number of future rolls averaged over: 0 is the evaluator itself, 1 averages the 21 rolls that follow
 */
public record Depth(int lookahead) {
    /** The evaluator itself, nothing averaged. */
    public static final Depth STATIC = new Depth(0);

    /**
     * Checks the number.
     *
     * @param lookahead at least 0
     * @throws IllegalArgumentException if it is negative
     */
    public Depth {
        if (lookahead < 0) {
            throw new IllegalArgumentException("a lookahead is at least 0, not " + lookahead);
        }
    }

    /** The depth in words, as in {@code lookahead 0}. */
    @Override
    public String toString() {
        return "lookahead " + lookahead;
    }
}
