package org.pipwright.engine.matchtable;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.pipwright.engine.PublicApi;

/** The match table that comes with Pipwright. Its first lines tell how it was computed. */
@PublicApi
public final class ShippedMatchTable {
    /** Name of the resource, from the root of the class path. */
    public static final String RESOURCE = "/org/pipwright/engine/matchtable/match-table.csv";

    private ShippedMatchTable() {}

    /**
     * Loads it.
     *
     * @return the table, to 25-away
     */
    public static MatchTable load() {
        try (InputStream in = ShippedMatchTable.class.getResourceAsStream(RESOURCE)) {
            return MatchTableCsv.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the resource " + RESOURCE, e);
        }
    }
}
