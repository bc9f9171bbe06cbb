package org.pipwright.engine.review;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.record.GameRecord;

/** Who looks at the turns of a record. */
@FunctionalInterface
interface Reviewers {
    /**
     * Looks at turns, until all are done or it is told to stop.
     *
     * @param record the record
     * @param turns numbers of the turns, in the order in which to begin with them
     * @param found given each turn's number and what was found about it, one call at a time, in any order
     * @param stopped asked now and then whether to give up; a cancellation may tell that it was
     */
    void find(GameRecord record, List<Integer> turns, BiConsumer<Integer, Finding> found, BooleanSupplier stopped);
}
