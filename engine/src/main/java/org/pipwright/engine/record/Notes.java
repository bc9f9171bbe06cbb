package org.pipwright.engine.record;

import org.pipwright.engine.text.Printable;

/** Texts that have to fit on one line. */
final class Notes {
    private Notes() {}

    /** Refuses what would not come back from a line of text as it was. */
    static void check(String note) {
        if (!note.equals(tidy(note))) {
            throw new IllegalArgumentException("a note is one line without control characters or blanks at its ends");
        }
    }

    /** A text on one line: what is not fit to print and runs of blanks become one space each. */
    static String tidy(String text) {
        return Printable.line(text);
    }
}
