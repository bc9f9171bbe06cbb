package org.pipwright.engine.text;

/** Foreign text made fit for an error line: one line, no control characters, not too long. */
public final class Excerpt {
    /** Longest excerpt, in chars. */
    public static final int LIMIT = 60;

    /** Most file systems take no longer name. */
    private static final int LONGEST_NAME = 255;

    private static final String CUT = "...";

    private Excerpt() {}

    /**
     * A path for an error line: as it is, unless it is longer than a usual file's.
     *
     * @param path a path
     * @return it, or its end behind three dots, at most 258 chars
     */
    public static String ofPath(String path) {
        return path.length() <= LONGEST_NAME ? path : CUT + path.substring(path.length() - LONGEST_NAME);
    }

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
