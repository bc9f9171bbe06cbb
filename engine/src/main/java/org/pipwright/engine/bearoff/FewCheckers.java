package org.pipwright.engine.bearoff;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.pipwright.engine.position.Planes;

/**
 * One-sided tables for the last checkers of a side, far from home too: up to four on any points, five on 16 points, six on
 * 12, eight on 8. Each is built when a side is first asked for that it covers, in at most some tenths of a second, and kept;
 * where it covers, plays on the way home need no guess. Shared by threads.
 */
final class FewCheckers {
    /** Most arrangements of a table. */
    private static final int MAX_ARRANGEMENTS = 21_000;

    /** Points are rounded up to a multiple, so that there are few tables. */
    private static final int STEP = 4;

    private static final int FEWEST = 2;

    private static final Map<Integer, OneSidedTable> TABLES = new ConcurrentHashMap<>();

    private FewCheckers() {}

    /** The table that covers a side, whose four planes are in an array; null if there is none. */
    static OneSidedTable covering(int[] planes, int at) {
        int occupied = Planes.occupied(planes, at) & Planes.ON_BOARD;
        int checkers = Math.max(FEWEST, Planes.checkers(planes, at, occupied));
        // A side that has borne all off is in every table.
        int highest = Math.max(1, Integer.SIZE - 1 - Integer.numberOfLeadingZeros(occupied));
        int points = (highest + STEP - 1) / STEP * STEP;
        if (points > Planes.PLACES - 2 || arrangements(points, checkers) > MAX_ARRANGEMENTS) {
            return null;
        }
        return TABLES.computeIfAbsent(
                Planes.PLACES * checkers + points,
                key -> OneSidedTable.build(new SideIndex(points, checkers), 1, TableProgress.NONE));
    }

    private static double arrangements(int points, int checkers) {
        double number = 1;
        for (int i = 1; i <= checkers; i++) {
            number = number * (points + i) / i;
        }
        return number;
    }
}
