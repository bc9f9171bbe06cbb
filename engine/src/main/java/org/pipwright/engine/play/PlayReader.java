package org.pipwright.engine.play;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pipwright.engine.play.WrittenPlay.Hop;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.text.Excerpt;

/** Text to a play as written: what people write, whatever the position. */
final class PlayReader {
    /** Longest text accepted, in chars: several times the longest canonical one. */
    private static final int LIMIT = 200;

    private static final Set<String> NOTHING = Set.of(PlayPrinter.NO_PLAY, "none", "dance", "cannot move");

    private static final String EXAMPLE = "write it like 8/5 6/5, 13/7*, bar/22, 6/off(2) or no play";

    private static final Pattern MOVES = Pattern.compile("(\\w+(?:/\\w+\\*?)+)(?:\\((\\d{1,2})\\)(\\*?))?");

    private final List<Hop> hops = new ArrayList<>();
    private int stars;

    private PlayReader() {}

    static WrittenPlay read(String text) {
        if (text.length() > LIMIT) {
            throw new IllegalPlayException(
                    "the play has " + text.length() + " characters, at most " + LIMIT + ": " + EXAMPLE);
        }
        String tidy = text.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s,;]+", " ")
                .replaceAll(" ?/ ?", "/")
                .replaceAll(" (?=[*(])", "");
        if (NOTHING.contains(tidy)) {
            return new WrittenPlay(List.of(), 0);
        }
        PlayReader reader = new PlayReader();
        for (String word : tidy.strip().split(" ")) {
            reader.word(word);
        }
        return new WrittenPlay(List.copyOf(reader.hops), reader.stars);
    }

    private void word(String word) {
        if (word.isEmpty()) {
            throw new IllegalPlayException("the play is empty: " + EXAMPLE);
        }
        Matcher moves = MOVES.matcher(word);
        if (!moves.matches()) {
            throw new IllegalPlayException("'" + Excerpt.of(word) + "' is not a move of a checker: " + EXAMPLE);
        }
        int times = times(moves.group(2), word);
        String path = moves.group(1) + (moves.group(3) == null ? "" : moves.group(3));
        for (int i = 0; i < times; i++) {
            path(path.split("/"), word);
        }
    }

    private static int times(String digits, String word) {
        int times = digits == null ? 1 : Integer.parseInt(digits);
        if (times < 1 || times > 4) {
            throw new IllegalPlayException("'" + word + "' counts " + times + " checkers: a roll moves one to four");
        }
        return times;
    }

    private void path(String[] stops, String word) {
        int from = place(stops[0], word);
        for (int i = 1; i < stops.length; i++) {
            boolean star = stops[i].endsWith("*");
            int to = place(star ? stops[i].substring(0, stops[i].indexOf('*')) : stops[i], word);
            hops.add(new Hop(from, to));
            stars |= star ? 1 << to : 0;
            from = to;
        }
    }

    private static int place(String name, String word) {
        switch (name) {
            case "b":
            case "bar":
                return Planes.BAR;
            case "o":
            case "off":
                return Planes.OFF;
            default:
                if (name.matches("\\d{1,2}") && Integer.parseInt(name) <= Planes.BAR) {
                    return Integer.parseInt(name);
                }
                throw new IllegalPlayException("'" + Excerpt.of(name) + "' in '" + Excerpt.of(word)
                        + "' is not a place: use points 1 to 24, bar or off");
        }
    }
}
