package org.pipwright.engine.bearoff;

import org.pipwright.engine.PublicApi;

/** Told what happens while tables are opened or built. */
@PublicApi
public interface TableListener {
    /** Listens to nothing. */
    TableListener SILENT = new TableListener() {
        @Override
        public void note(String line) {
            // nobody listens
        }

        @Override
        public TableProgress building(String table) {
            return TableProgress.NONE;
        }
    };

    /**
     * Something a user may want to know, such as that a damaged file is replaced.
     *
     * @param line one line of text
     */
    void note(String line);

    /**
     * A table is about to be built.
     *
     * @param table what it is, as in {@code one-sided table (15 checkers on 6 points)}
     * @return told how far it comes
     */
    TableProgress building(String table);
}
