package org.pipwright.engine.search;

import java.util.List;
import org.pipwright.engine.roll.Roll;

/**
 * The replies of one position to all 21 rolls, valued without lookahead and then left as they are. They are found in parts, a
 * few rolls each: more than one where there would be less work than threads.
 *
 * @param parts the parts, in the order of {@link Roll#all()}
 */
record Expansion(List<Replies> parts) {
    Expansion {
        parts = List.copyOf(parts);
    }

    /** How many parts keep all threads busy. The fewer, the better: the weights of a deep network are fetched once a part. */
    static int parts(int positions, int threads) {
        return positions == 0 ? 0 : Math.min(Roll.COUNT, (threads + positions - 1) / positions);
    }

    /** The first roll of a part. */
    int first(int part) {
        return Roll.COUNT * part / parts.size();
    }

    /** The replies that those to a roll are among. */
    Replies of(int roll) {
        return parts.get(((roll + 1) * parts.size() - 1) / Roll.COUNT);
    }
}
