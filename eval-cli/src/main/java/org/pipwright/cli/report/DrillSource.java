package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;

/** Where the exercises of a drill come from. */
public sealed interface DrillSource permits DrillOwnGames, DrillRecords, DrillPositions {
    /**
     * What stands above the exercises unless the user gives a title.
     *
     * @return a few words, beginning with a capital letter
     */
    String title();

    /**
     * What the exercises are about.
     *
     * @return a few words that go on after a colon
     */
    String about();

    /**
     * How they were found, so that somebody else can find the same.
     *
     * @param net the net that judged
     * @return a sentence or two
     */
    String origin(String net);

    /**
     * A word for the head of the answers that tells this sheet from others.
     *
     * @return such as {@code seed 7}; may be empty
     */
    String mark();

    /**
     * Writes the members that tell it.
     *
     * @param json where to, inside an object
     * @throws IOException if that cannot be written to
     */
    void write(JsonGenerator json) throws IOException;
}
