package org.pipwright.engine.position;

import java.util.Set;
import org.pipwright.engine.text.StrictJson;

/** Reads one side of the JSON form. */
final class SideReader {
    private final String who;
    private final SideCounts counts;

    SideReader(String who) {
        this.who = who;
        counts = new SideCounts(who);
    }

    void read(StrictJson json) {
        Set<String> keys = json.object(who, "points, bar and off", key -> {
            switch (key) {
                case "points":
                    points(json);
                    return true;
                case "bar":
                    counts.put(Planes.BAR, json.integer("bar of " + who, 0, Position.FULL));
                    return true;
                case "off":
                    counts.put(Planes.OFF, json.integer("off of " + who, 0, Position.FULL));
                    return true;
                default:
                    return false;
            }
        });
        if (!keys.contains("points")) {
            throw new InvalidPositionException(who + " has no 'points': give {} if there is none");
        }
    }

    private void points(StrictJson json) {
        json.object("points of " + who, "\"1\" to \"24\", counted from its own home", key -> {
            if (!key.matches("[1-9]|1[0-9]|2[0-4]")) {
                return false;
            }
            counts.put(Integer.parseInt(key), json.integer("point " + key + " of " + who, 1, Position.FULL));
            return true;
        });
    }

    int[] counts(int checkers) {
        return counts.complete(checkers);
    }
}
