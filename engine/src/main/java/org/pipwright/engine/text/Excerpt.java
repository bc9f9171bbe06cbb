package org.pipwright.engine.text;

/** Foreign text made fit for an error line: one line, no control characters, not too long. */
public final class Excerpt {
    /** Longest excerpt, in chars. */
    public static final int LIMIT = 60;

    private static final String CUT = "...";

    private Excerpt() {}

    /**
     * An excerpt of a text.
     *
     * @param text any text
     * @return its beginning on one line, at most {@value #LIMIT} chars; a text that was cut ends in three dots
     */
    public static String of(String text) {
        String head = Printable.head(text, 4 * LIMIT);
        String line = Printable.of(head.replaceAll("[\\s\\p{Cntrl}]+", " ").strip());
        return line.length() <= LIMIT && head.length() == text.length()
                ? line
                : Printable.head(line, LIMIT - CUT.length()) + CUT;
    }
}
