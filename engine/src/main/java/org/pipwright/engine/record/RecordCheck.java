package org.pipwright.engine.record;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.PublicApi;

/**
 * A record gone through to its end, with all mistakes in it.
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
     * Goes through the text form of a record. Behind a mistake it goes on as if a name had been the near one, or a roll the
     * one that the play needs; where that is not to be seen, names, rolls and words are looked at up to the end of the game,
     * since what could be played is not known any more, and the next game begins with the score in its line.
     *
     * @param text the text
     * @return what is found
     */
    public static RecordCheck of(String text) {
        return new RecordReader(false).check(text);
    }
}
