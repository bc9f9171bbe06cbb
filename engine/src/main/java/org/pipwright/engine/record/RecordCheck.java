package org.pipwright.engine.record;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.PublicApi;

/**
 * A record read to its end, with all mistakes found in it.
 *
 * @param heading who plays and for what; empty if that cannot be read
 * @param record the record; empty if there is a mistake
 * @param faults the mistakes in their order
 */
@PublicApi
public record RecordCheck(Optional<Heading> heading, Optional<GameRecord> record, List<Fault> faults) {
    /**
     * A mistake.
     *
     * @param error where, what, and what was expected
     * @param stand how the game stood before it; empty if that is not known
     */
    public record Fault(InvalidRecordException error, Optional<Stand> stand) {}

    /**
     * Checks the text form of a record to its end. After a mistake it assumes the nearest name, or the roll that the
     * play needs; where neither can be told, only names, rolls and words are checked up to the end of the game, since
     * the position is no longer known, and the next game begins with the score on its line.
     *
     * @param text the text
     * @return what is found
     */
    public static RecordCheck of(String text) {
        return new RecordReader(false).check(text);
    }
}
