package org.pipwright.engine.record;

/** Texts that have to fit on one line. */
final class Notes {
    private Notes() {}

    /** Refuses what would not come back from a line of text as it was. */
    static void check(String note) {
        if (!note.equals(tidy(note))) {
            throw new IllegalArgumentException("a note is one line without control characters or blanks at its ends");
        }
    }

    /** A text on one line: control characters and runs of blanks become one space each. */
    static String tidy(String text) {
        return text.replaceAll("[\\s\\p{Cntrl}\\u0085\\u2028\\u2029]+", " ").strip();
    }
}
