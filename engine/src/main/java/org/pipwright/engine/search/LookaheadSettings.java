package org.pipwright.engine.search;

import java.io.Serializable;
import java.util.List;

/**
 * How a search prunes candidates. Plays are first valued without lookahead; entry 0 of a list says which of them are
 * valued with lookahead 1, entry 1 which of those with lookahead 2, and so on; the last entry holds for all that follow.
 *
 * @param root for the plays of the roll that is asked about
 * @param inner for the replies of both sides on the way
 */
public record LookaheadSettings(List<Pruning> root, List<Pruning> inner) implements Serializable {
    /** Largest lookahead; each one costs 21 rolls times the kept replies. */
    public static final int MAX = 6;

    /** Every play to full depth: exact, and slow beyond lookahead 1. */
    public static final LookaheadSettings FULL = new LookaheadSettings(List.of(Pruning.NONE), List.of(Pruning.NONE));

    /** The defaults. */
    public static final LookaheadSettings DEFAULT = new LookaheadSettings(
            List.of(new Pruning(0.16f, 8), new Pruning(0.04f, 4)), List.of(new Pruning(0.02f, 2)));

    /**
     * Copies the lists.
     *
     * @param root at least one entry
     * @param inner at least one entry
     */
    public LookaheadSettings {
        root = List.copyOf(root);
        inner = List.copyOf(inner);
        if (root.isEmpty() || inner.isEmpty()) {
            throw new IllegalArgumentException("each list of prunings needs an entry: use Pruning.NONE");
        }
    }

    static Pruning at(List<Pruning> prunings, int lookahead) {
        return prunings.get(Math.min(lookahead, prunings.size() - 1));
    }

    /**
     * Checks a lookahead.
     *
     * @param lookahead future rolls to average over
     * @throws IllegalArgumentException if it is not 0 to {@value #MAX}
     */
    public static void requireLookahead(int lookahead) {
        if (lookahead < 0 || lookahead > MAX) {
            throw new IllegalArgumentException("lookahead " + lookahead + ": use 0 to " + MAX);
        }
    }
}
