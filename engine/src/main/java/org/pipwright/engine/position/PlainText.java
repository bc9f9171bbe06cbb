package org.pipwright.engine.position;

/**
 * Reads the most usual text of a position, two sides of 15 checkers with single spaces, in one pass and without regular
 * expressions; whatever else a text has, and whatever is wrong with it, is left to {@link PositionText}.
 */
final class PlainText {
    private static final int HIGHEST = 24;

    private final String text;
    private int at;

    private PlainText(String text) {
        this.text = text;
    }

    /** The counts of both sides, each as {@link Position#of} takes them, or null if that needs a closer look. */
    static int[][] read(String text) {
        PlainText plain = new PlainText(text);
        int[] me = plain.side();
        if (me == null || !text.startsWith("/ ", plain.at)) {
            return null;
        }
        plain.at += 2;
        int[] opponent = plain.side();
        return opponent == null || plain.at < text.length() ? null : new int[][] {me, opponent};
    }

    /** Groups up to a slash or the end, each but the last of the text with a space behind it. */
    private int[] side() {
        int[] counts = new int[Planes.PLACES];
        counts[Planes.OFF] = Position.FULL;
        while (at < text.length() && text.charAt(at) != '/') {
            int count = number();
            if (count < 1 || count > counts[Planes.OFF] || at >= text.length() || text.charAt(at) != '@') {
                return null;
            }
            at++;
            int place = place();
            if (place < 1 || counts[place] > 0) {
                return null;
            }
            counts[place] = count;
            counts[Planes.OFF] -= count;
            if (at < text.length() && text.charAt(at++) != ' ') {
                return null;
            }
        }
        return counts[Planes.OFF] == Position.FULL ? null : counts;
    }

    private int place() {
        if (text.startsWith("bar", at)) {
            at += 3;
            return Planes.BAR;
        }
        int point = number();
        return point <= HIGHEST ? point : 0;
    }

    /** A number of one or two digits, or 0 if there is none. */
    private int number() {
        int number = 0;
        for (int end = Math.min(at + 2, text.length()); at < end && digit(text.charAt(at)); at++) {
            number = 10 * number + text.charAt(at) - '0';
        }
        return number;
    }

    private static boolean digit(char sign) {
        return sign >= '0' && sign <= '9';
    }
}
