package org.pipwright.engine.record;

import java.util.List;
import org.pipwright.engine.PublicApi;

/**
 * One recorded game.
 *
 * @param entries its lines
 * @param points what the first player won, negative if the second did; 0 if the record stops before the end
 */
@PublicApi
public record Game(List<Entry> entries, int points) {
    /**
     * Keeps the entries.
     *
     * @param entries its lines
     * @param points what the first player won
     */
    public Game {
        entries = List.copyOf(entries);
    }
}
