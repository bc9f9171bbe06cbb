package org.pipwright.engine.record;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.text.Excerpt;

/**
 * The heading of a record: what stands above the games.
 *
 * @param players two different names of up to {@value #LONGEST} characters, without comma, colon, slash or {@code #}
 * @param rules what is played for
 * @param details where, when and so on, by {@link #DETAILS}
 * @param remarks comments on the whole
 */
@PublicApi
public record Heading(List<String> players, Rules rules, Map<String, String> details, List<String> remarks) {
    /** Longest name of a player, in chars. */
    public static final int LONGEST = 40;

    /** Names of further details, in the order in which they are written. */
    public static final List<String> DETAILS = List.of("event", "place", "date", "scorer");

    /**
     * Checks the heading.
     *
     * @param players two names
     * @param rules what is played for
     * @param details where, when and so on
     * @param remarks comments on the whole
     * @throws IllegalArgumentException if a name or detail cannot be written in a record
     */
    public Heading {
        players = List.copyOf(players);
        details = Collections.unmodifiableMap(new TreeMap<>(details));
        remarks = List.copyOf(remarks);
        if (players.size() != 2 || players.get(0).equals(players.get(1))) {
            throw new IllegalArgumentException("a record has two players with different names");
        }
        players.forEach(Heading::checkName);
        if (players.get(0).startsWith(players.get(1) + " ") || players.get(1).startsWith(players.get(0) + " ")) {
            throw new IllegalArgumentException("one player's name begins with the other's: tell them apart");
        }
        if (!DETAILS.containsAll(details.keySet())) {
            throw new IllegalArgumentException("the details of a record are " + DETAILS);
        }
        details.values().forEach(Heading::checkDetail);
        remarks.forEach(Notes::check);
    }

    private static void checkName(String name) {
        Notes.check(name);
        if (!name.matches("[^,:/#\\s][^,:/#]*") || name.length() > LONGEST || name.matches("game([\\s\\d].*)?")) {
            throw new IllegalArgumentException("'" + Excerpt.of(name) + "' is not a player's name: use up to " + LONGEST
                    + " characters without comma, colon, slash and #");
        }
    }

    private static void checkDetail(String detail) {
        Notes.check(detail);
        if (detail.isEmpty() || detail.startsWith("#") || detail.contains(" #")) {
            throw new IllegalArgumentException("a detail is a text without a #");
        }
    }

    /**
     * Place of a player's name.
     *
     * @param side 0 or 1
     * @return the name
     */
    public String name(int side) {
        return players.get(side);
    }
}
