package org.pipwright.engine.text;

import java.util.Locale;

/**
 * The one place that says which characters are fit to print: not those that steer a terminal (controls, C0 and C1), turn
 * the direction of what follows them (embeddings, overrides and isolates of the Unicode bidirectional algorithm, UAX 9),
 * break a line, or are half of a character. Letters, marks and joiners of every script are.
 */
public final class Printable {
    private Printable() {}

    /**
     * Whether a character may be printed as it is.
     *
     * @param codePoint a Unicode code point, a surrogate if it has lost its other half
     * @return false if it has to be shown in another way
     */
    public static boolean is(int codePoint) {
        return !Character.isISOControl(codePoint)
                && codePoint != 0x2028
                && codePoint != 0x2029
                && !(codePoint >= 0x202a && codePoint <= 0x202e)
                && !(codePoint >= 0x2066 && codePoint <= 0x2069)
                && !(codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE)
                && codePoint != 0xfffe
                && codePoint != 0xffff;
    }

    /**
     * A text fit to print.
     *
     * @param text any text
     * @return the same, with what is not fit written as in {@code \\u001b}
     */
    public static String of(String text) {
        return with(text, "");
    }

    /**
     * A text of several lines fit to print.
     *
     * @param text any text
     * @param kept characters to leave as they are: line feeds, say
     * @return the same, with what is not fit and not kept written as in {@code \\u001b}
     */
    public static String with(String text, String kept) {
        if (text.codePoints().allMatch(Printable::is)) {
            return text;
        }
        StringBuilder fit = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (is(c) || kept.indexOf(c) >= 0) {
                fit.appendCodePoint(c);
            } else {
                fit.append(String.format(Locale.ROOT, "\\u%04x", c));
            }
        });
        return fit.toString();
    }

    /**
     * A text on one line: what is not fit to print and runs of blanks become one space each, none at the ends.
     *
     * @param text any text
     * @return the line
     */
    public static String line(String text) {
        StringBuilder line = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (is(c) && c != ' ') {
                line.appendCodePoint(c);
            } else if (line.length() > 0 && line.charAt(line.length() - 1) != ' ') {
                line.append(' ');
            }
        });
        return line.toString().strip();
    }

    /**
     * The beginning of a text, cut between characters.
     *
     * @param text any text
     * @param most chars to keep at most
     * @return the text, or so much of it
     */
    public static String head(String text, int most) {
        if (text.length() <= most) {
            return text;
        }
        return text.substring(0, Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most);
    }
}
