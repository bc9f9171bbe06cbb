package org.pipwright.engine.position;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.text.Excerpt;

/**
 * The text form of a position: what the side on roll has, a slash, what the opponent has, each counted from that side's
 * own home, as in {@code 5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24}. {@code 1@bar} is on the bar. Whatever is missing from
 * 15 has been borne off; a game with fewer checkers says so at the end, as in {@code 1@24 1@23 / 1@24 1@23 of 2}.
 * {@code start} is the starting position ({@code start of 3} of a reduced game).
 *
 * <p>Input takes spaces or commas, any order and capitals; output has one form: points from low to high, then the bar,
 * single spaces, and {@code off} for a side that has borne off every checker.
 */
@PublicApi
public final class PositionText {
    /** Longest text accepted, in chars: several times the longest canonical one. */
    private static final int LIMIT = 1000;

    private static final Pattern OF = Pattern.compile("^(.*?)\\s+of\\s+(\\S+)$");

    private static final Pattern GROUP = Pattern.compile("(\\d{1,9})@(\\d{1,9}|bar|off)");

    private static final String EXAMPLE = "write it like 5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24, or start";

    private PositionText() {}

    /**
     * Reads a position.
     *
     * @param text the text form
     * @return the position
     * @throws InvalidPositionException if the text cannot be read or the position cannot be; one line says where and why
     */
    public static Position parse(String text) {
        int[][] plain = PlainText.read(text);
        return plain == null ? parseAny(text) : Position.of(plain[0], plain[1]);
    }

    /** Reads all that may be written, and says what may not. */
    static Position parseAny(String text) {
        if (text.length() > LIMIT) {
            throw new InvalidPositionException(
                    "the position has " + text.length() + " characters, at most " + LIMIT + ": " + EXAMPLE);
        }
        String rest = text.strip().toLowerCase(Locale.ROOT).replace(',', ' ').replaceAll("\\s+", " ");
        int checkers = Position.FULL;
        Matcher of = OF.matcher(rest);
        if (of.matches()) {
            checkers = checkerCount(of.group(2));
            rest = of.group(1);
        }
        if (rest.equals("start")) {
            return Position.start(checkers);
        }
        String[] sides = rest.split("/", -1);
        if (sides.length != 2) {
            throw new InvalidPositionException("a position has two sides with one slash between them, but '"
                    + Excerpt.of(text) + "' has " + (sides.length == 1 ? "none" : sides.length - 1) + ": " + EXAMPLE);
        }
        return Position.of(side(sides[0], checkers, "the side on roll"), side(sides[1], checkers, "the opponent"));
    }

    private static int checkerCount(String word) {
        if (!word.matches("\\d{1,2}")) {
            throw new InvalidPositionException(
                    "'of " + Excerpt.of(word) + "' should give the checkers a side, as in 'of 3'");
        }
        int checkers = Integer.parseInt(word);
        if (checkers < 1 || checkers > Position.FULL) {
            throw new InvalidPositionException("a side has 1 to " + Position.FULL + " checkers, not " + checkers);
        }
        return checkers;
    }

    private static int[] side(String text, int checkers, String who) {
        SideCounts counts = new SideCounts(who);
        String groups = text.strip();
        if (groups.isEmpty()) {
            throw new InvalidPositionException(
                    who + " has nothing before or after the slash: write 'off' if it has" + " borne off every checker");
        }
        if (!groups.equals("off")) {
            for (String word : groups.split(" ")) {
                Matcher group = GROUP.matcher(word);
                if (!group.matches()) {
                    throw new InvalidPositionException(
                            "'" + Excerpt.of(word) + "' of " + who + " is not a group of checkers: " + EXAMPLE);
                }
                counts.put(place(group.group(2), word, who), bounded(group.group(1), word, who));
            }
        }
        return counts.complete(checkers);
    }

    private static int bounded(String digits, String word, String who) {
        int count = Integer.parseInt(digits);
        if (count < 1 || count > Position.FULL) {
            throw new InvalidPositionException(
                    "'" + word + "' of " + who + " has " + count + " checkers: use 1 to " + Position.FULL);
        }
        return count;
    }

    private static int place(String name, String word, String who) {
        if (name.equals("bar")) {
            return Planes.BAR;
        }
        if (name.equals("off")) {
            return Planes.OFF;
        }
        int point = Integer.parseInt(name);
        if (point < 1 || point > 24) {
            throw new InvalidPositionException(
                    "'" + word + "' of " + who + " has no such point: use 1 to 24, counted from its own home, or bar");
        }
        return point;
    }

    /**
     * The canonical text form.
     *
     * @param position a position
     * @return text that {@link #parse} reads back as an equal position
     */
    public static String print(Position position) {
        StringBuilder text = new StringBuilder();
        int checkers = position.checkers();
        appendSide(text, position);
        text.append(" / ");
        appendSide(text, position.swapped());
        if (checkers != Position.FULL) {
            text.append(" of ").append(checkers);
        }
        return text.toString();
    }

    private static void appendSide(StringBuilder text, Position position) {
        int before = text.length();
        for (int place = 1; place <= Planes.BAR; place++) {
            int count = position.count(place);
            if (count > 0) {
                text.append(text.length() > before ? " " : "").append(count).append('@');
                text.append(place == Planes.BAR ? "bar" : Integer.toString(place));
            }
        }
        if (text.length() == before) {
            text.append("off");
        }
    }
}
