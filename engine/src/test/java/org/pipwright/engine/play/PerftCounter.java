package org.pipwright.engine.play;

import java.util.HashSet;
import java.util.Set;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.roll.Roll;

/**
 * Counts what follows from a position when all 21 rolls are played out for some plies. A line of play is one roll and one
 * of its distinct results for each ply; a roll that cannot be played gives one line; a finished game has no further plies.
 */
final class PerftCounter {
    /** How one roll's distinct results are found. */
    interface Generator {
        /** Distinct results, from the mover's side. */
        Iterable<NaiveBoard> results(NaiveBoard board, Roll roll);
    }

    /** Lines of play of exactly the given plies, and the distinct positions, side on roll included, that they end in. */
    record Count(long lines, long positions) {}

    private final Generator generator;
    private long lines;
    private final Set<NaiveBoard> positions = new HashSet<>();

    private PerftCounter(Generator generator) {
        this.generator = generator;
    }

    static Count count(Generator generator, NaiveBoard board, int plies) {
        PerftCounter counter = new PerftCounter(generator);
        counter.follow(board, plies);
        return new Count(counter.lines, counter.positions.size());
    }

    private void follow(NaiveBoard board, int plies) {
        if (plies == 0) {
            lines++;
            positions.add(board);
            return;
        }
        if (NaiveRules.finished(board)) {
            return;
        }
        for (Roll roll : Roll.all()) {
            for (NaiveBoard result : generator.results(board, roll)) {
                follow(result.swapped(), plies - 1);
            }
        }
    }
}
