package org.pipwright.engine.drill;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** Facts about a position that themes are defined by, all of the side on roll unless they say otherwise. */
final class Facts {
    /** The opponent's home and the bar, in the own numbering. */
    private static final int BACK = Planes.HOME << 18 | 1 << Planes.BAR;

    private static final int REACH = 6;

    private Facts() {}

    /** Checkers of both sides that stand where they stood at the start: 0 to 30. */
    static int unmoved(Position position) {
        Position start = Position.start();
        int unmoved = 0;
        for (int point = 1; point < Planes.BAR; point++) {
            unmoved += Math.min(position.count(point), start.count(point));
            unmoved += Math.min(position.opponentCount(point), start.opponentCount(point));
        }
        return unmoved;
    }

    /** The opponent's checkers that a play has hit: 0 to 4. */
    static int hits(Position before, Position after) {
        return after.opponentCount(Planes.BAR) - before.opponentCount(Planes.BAR);
    }

    /** Most made points in a row that some checker of the opponent still has to pass: 0 to 7. */
    static int prime(Position position) {
        int[] planes = position.toPlanes();
        // The opponent's rearmost checker has the lowest number here, 0 on the bar.
        int behind = Planes.BAR - Planes.rearmost(planes, Planes.SIDE);
        int run = Planes.held(planes, 0) & Planes.POINTS & -1 << behind + 1;
        int length = 0;
        while (run != 0) {
            run &= run >>> 1;
            length++;
        }
        return length;
    }

    /** Checkers in the opponent's home or on the bar: 0 to 15. */
    static int back(Position position) {
        return Planes.checkers(position.toPlanes(), 0, BACK);
    }

    /** Points that the opponent holds among the six in front of the rearmost checker: 0 to 6. */
    static int block(Position position) {
        int[] planes = position.toPlanes();
        int rearmost = Planes.rearmost(planes, 0);
        int held = Planes.mirror(Planes.held(planes, Planes.SIDE)) & Planes.POINTS;
        int ahead = (1 << rearmost) - 1 & -1 << Math.max(0, rearmost - REACH);
        return Integer.bitCount(held & ahead);
    }

    /** Own place furthest from home that holds a checker: 0 to 25. */
    static int rearmost(Position position) {
        return Planes.rearmost(position.toPlanes(), 0);
    }
}
