package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.position.Planes;

/**
 * Where a checker can stand on a board that is being set up.
 *
 * @param number a point as the side on roll counts it, {@link Planes#BAR} or {@link Planes#OFF}
 * @param theirs whether bar or tray are the opponent's; false for points, where either side may stand
 */
record Place(int number, boolean theirs) {
    private static final int POINTS = 24;

    /** As rows of the board have them, home at the right: points 13 to 24 with bar and tray, then 12 to 1 with theirs. */
    static List<Place> all() {
        List<Place> all = new ArrayList<>();
        for (int column = 0; column < 12; column++) {
            if (column == 6) {
                all.add(new Place(Planes.BAR, true));
            }
            all.add(new Place(13 + column, false));
        }
        all.add(new Place(Planes.OFF, true));
        for (int column = 0; column < 12; column++) {
            if (column == 6) {
                all.add(new Place(Planes.BAR, false));
            }
            all.add(new Place(12 - column, false));
        }
        all.add(new Place(Planes.OFF, false));
        return all;
    }

    static Optional<Place> parse(String name) {
        return all().stream().filter(place -> place.name().equals(name)).findFirst();
    }

    boolean point() {
        return number >= 1 && number <= POINTS;
    }

    /** Its number as a side counts it. */
    int seen(boolean mine) {
        return mine || !point() ? number : POINTS + 1 - number;
    }

    /** Its name in addresses. */
    String name() {
        return point() ? Integer.toString(number) : (theirs ? "their-" : "") + (number == Planes.BAR ? "bar" : "off");
    }

    /** Its name in sentences. */
    String words() {
        return point()
                ? "point " + number
                : (theirs ? "the opponent's " : "your ") + (number == Planes.BAR ? "bar" : "tray");
    }
}
