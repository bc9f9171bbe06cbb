package org.pipwright.engine.text;

import java.util.regex.Pattern;

/**
 * Numbers as people write them: digits from 0 to 9, a sign, a point, a power of ten. Java's own readers also take digits of
 * every script, hexadecimal floats, letters of types behind a number, and words for what is no number.
 */
public final class PlainNumber {
    private static final Pattern WHOLE = Pattern.compile("[+-]?[0-9]{1,19}");
    private static final Pattern DECIMAL =
            Pattern.compile("[+-]?([0-9]{1,300}\\.?|\\.[0-9])[0-9]{0,300}([eE][+-]?[0-9]{1,3})?");

    private PlainNumber() {}

    /**
     * A whole number.
     *
     * @param text digits, perhaps with a sign before them
     * @return the number
     * @throws NumberFormatException if it is none, or is too large for a long
     */
    public static long whole(String text) {
        return Long.parseLong(required(text, WHOLE));
    }

    /**
     * A number.
     *
     * @param text as in {@code 12}, {@code -0.5}, {@code .5} or {@code 1e-3}
     * @return the number; infinite if it is too large for a double
     * @throws NumberFormatException if it is none
     */
    public static double decimal(String text) {
        return Double.parseDouble(required(text, DECIMAL));
    }

    private static String required(String text, Pattern form) {
        if (!form.matcher(text).matches()) {
            throw new NumberFormatException(Excerpt.of(text));
        }
        return text;
    }
}
