package org.pipwright.cli.desk;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * What an address of the board holds: everything that is set up there, so that a bookmark brings it back. Immutable.
 *
 * @param layout the checkers
 * @param roll the dice; empty before they are thrown
 * @param playedFor stakes and cube
 * @param asking what is asked about it
 * @param look how the board is shown
 */
record Setting(Layout layout, Optional<Roll> roll, PlayedFor playedFor, Asking asking, Look look) {
    /**
     * What is asked about a position.
     *
     * @param play the play that is shown; empty for none
     * @param ahead how far to look ahead
     */
    record Asking(Optional<Play> play, int ahead) {
        static final Asking USUAL = new Asking(Optional.empty(), 2);

        Asking without() {
            return new Asking(Optional.empty(), ahead);
        }
    }

    /**
     * How a board is shown.
     *
     * @param homeLeft whether the home is at the left
     * @param pips whether the pips are shown; if not, they are to be counted
     * @param picked the place that is picked; empty for none
     */
    record Look(boolean homeLeft, boolean pips, Optional<Place> picked) {
        static final Look USUAL = new Look(false, true, Optional.empty());
    }

    static final Setting START =
            new Setting(Layout.of(Position.start()), Optional.empty(), PlayedFor.USUAL, Asking.USUAL, Look.USUAL);

    Setting with(Layout other) {
        return new Setting(other, roll, playedFor, asking.without(), look);
    }

    Setting with(Optional<Roll> other) {
        return new Setting(layout, other, playedFor, asking.without(), look);
    }

    Setting picking(Optional<Place> place) {
        return new Setting(layout, roll, playedFor, asking, new Look(look.homeLeft, look.pips, place));
    }

    Setting homeLeft(boolean left) {
        return new Setting(layout, roll, playedFor, asking, new Look(left, look.pips, look.picked));
    }

    Setting pips(boolean shown) {
        return new Setting(layout, roll, playedFor, asking, new Look(look.homeLeft, shown, look.picked));
    }

    /** With a play shown, or none if it is null. */
    Setting choosing(Play play) {
        return new Setting(layout, roll, playedFor, new Asking(Optional.ofNullable(play), asking.ahead), look);
    }

    /** The question that is set up; empty where there is nothing to ask. */
    Optional<Question> question() {
        return layout.position()
                .filter(position -> !position.finished())
                .map(position ->
                        roll.map(dice -> Question.of(position, dice)).orElseGet(() -> Question.before(position)))
                .map(question -> question.with(playedFor.stakes(), playedFor.cube()));
    }

    /** The opponent on roll, before the dice. */
    Setting swapped() {
        return new Setting(layout.swapped(), Optional.empty(), playedFor.swapped(), asking.without(), look)
                .picking(Optional.empty());
    }

    /** The fields of the address, without those that are as usual. */
    Map<String, String> fields() {
        Map<String, String> fields = new LinkedHashMap<>();
        String text = layout.text();
        if (!text.equals(START.layout.text())) {
            fields.put("position", text);
        }
        roll.ifPresent(dice -> fields.put("roll", dice.toString()));
        asking.play.ifPresent(play -> fields.put("play", play.toString()));
        playedFor.write(fields);
        if (asking.ahead != Asking.USUAL.ahead) {
            fields.put("ahead", Integer.toString(asking.ahead));
        }
        if (look.homeLeft) {
            fields.put("home", "left");
        }
        if (!look.pips) {
            fields.put("pips", "hidden");
        }
        look.picked.ifPresent(place -> fields.put("pick", place.name()));
        return fields;
    }

    /** The address without its path. */
    String query() {
        return query(fields());
    }

    /** Such fields as an address has them, readable as far as browsers leave it so. */
    static String query(Map<String, String> fields) {
        return fields.entrySet().stream()
                .map(field -> field.getKey() + "=" + encoded(field.getValue()))
                .collect(Collectors.joining("&"));
    }

    private static String encoded(String value) {
        return URLEncoder.encode(value, StandardCharsets.UTF_8)
                .replace("%40", "@")
                .replace("%2F", "/")
                .replace("%2C", ",")
                .replace("%28", "(")
                .replace("%29", ")")
                .replace("%2A", "*");
    }

    /** The address of the board. */
    String address() {
        String query = query();
        return query.isEmpty() ? "/board" : "/board?" + query;
    }
}
