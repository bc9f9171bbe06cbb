package org.pipwright.engine.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.engine.text.Excerpt;

/** The lines above the first game. */
final class HeadingReader {
    private static final String KEYS = "players, match or money, " + String.join(", ", Heading.DETAILS);

    private List<String> players;
    private Rules rules;
    private final Map<String, String> details = new TreeMap<>();
    private final List<String> remarks = new ArrayList<>();

    void remark(String text) {
        remarks.add(text);
    }

    /** Reads a line; throws IllegalArgumentException with what is wrong. */
    void line(String said) {
        int colon = said.indexOf(':');
        if (colon < 0) {
            throw new IllegalArgumentException("'" + Excerpt.of(said)
                    + "': expected 'game 1' or a line like 'players: Ada, Ben'; there are " + KEYS);
        }
        String key = said.substring(0, colon).strip().toLowerCase(Locale.ROOT);
        String value = Notes.tidy(said.substring(colon + 1));
        if (value.isEmpty()) {
            throw new IllegalArgumentException("'" + Excerpt.of(key) + "' is empty: expected a text after the colon");
        }
        switch (key) {
            case "players":
                once(players == null, key);
                players = players(value);
                break;
            case "match":
                once(rules == null, "match or money");
                rules = match(value);
                break;
            case "money":
                once(rules == null, "match or money");
                rules = money(value);
                break;
            default:
                detail(key, value);
        }
    }

    private static void once(boolean first, String key) {
        if (!first) {
            throw new IllegalArgumentException(key + " is given twice: expected once");
        }
    }

    private void detail(String key, String value) {
        if (!Heading.DETAILS.contains(key)) {
            throw new IllegalArgumentException("'" + Excerpt.of(key) + "': expected one of " + KEYS);
        }
        once(details.put(key, value) == null, key);
    }

    private static List<String> players(String value) {
        String[] names = value.split(",", -1);
        if (names.length != 2) {
            throw new IllegalArgumentException("'" + Excerpt.of(value) + "': expected two names, as in Ada, Ben");
        }
        List<String> both = List.of(names[0].strip(), names[1].strip());
        return new Heading(both, new Rules(1, false, false), Map.of(), List.of()).players();
    }

    private static Rules match(String value) {
        if (!value.matches("\\d{1,4}") || Integer.parseInt(value) < 1) {
            throw new IllegalArgumentException(
                    "'" + Excerpt.of(value) + "': expected the points that win the match, as in match: 5");
        }
        return new Rules(Integer.parseInt(value), false, false);
    }

    private static Rules money(String value) {
        switch (value.toLowerCase(Locale.ROOT)) {
            case "jacoby":
                return new Rules(0, true, false);
            case "no jacoby":
                return new Rules(0, false, false);
            case "jacoby, beavers":
                return new Rules(0, true, true);
            case "no jacoby, beavers":
                return new Rules(0, false, true);
            default:
                throw new IllegalArgumentException(
                        "'" + Excerpt.of(value) + "': expected jacoby or no jacoby, and perhaps beavers after a comma");
        }
    }

    Heading heading() {
        if (players == null) {
            throw new IllegalArgumentException(
                    "no players yet: expected a line like 'players: Ada, Ben' above the games");
        }
        if (rules == null) {
            throw new IllegalArgumentException("no rules yet: expected 'match: 5' or 'money: jacoby' above the games");
        }
        return new Heading(players, rules, details, remarks);
    }
}
