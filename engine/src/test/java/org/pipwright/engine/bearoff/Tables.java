package org.pipwright.engine.bearoff;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Tables that several test classes use, each built once. */
final class Tables {
    private static final Map<String, OneSidedTable> ONE_SIDED = new ConcurrentHashMap<>();

    private Tables() {}

    static OneSidedTable oneSided(int points, int checkers) {
        return ONE_SIDED.computeIfAbsent(
                points + "x" + checkers,
                key -> OneSidedTable.build(new SideIndex(points, checkers), 1, TableProgress.NONE));
    }

    /** The standard tables. */
    static EndgameTables standard() {
        return EndgameTables.of(oneSided(6, 15), twoSided());
    }

    /** Six checkers a side on points 1 to 6. */
    static TwoSidedTable twoSided() {
        return SixEach.TABLE;
    }

    private static final class SixEach {
        static final TwoSidedTable TABLE = TwoSidedTable.build(new SideIndex(6, 6), 1, TableProgress.NONE);
    }
}
