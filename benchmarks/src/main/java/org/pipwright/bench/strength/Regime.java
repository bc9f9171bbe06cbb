package org.pipwright.bench.strength;

import java.util.Locale;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * Kinds of positions that ask for different skills. The trade's terms, with limits of our own choice; a position belongs
 * to the first that fits in this order: race, bear-off against contact, opening, back game, priming, contact.
 */
public enum Regime {
    /** At least 24 of the 30 checkers stand where they started. */
    OPENING,
    /** None of the others. */
    CONTACT,
    /** One side has four points in a row or more, with a checker of the other behind them. */
    PRIMING,
    /** One side holds two points or more in the other's home and trails by 40 pips or more. */
    BACK_GAME,
    /** One side has all its checkers home or off, and there is contact. */
    BEAR_OFF_CONTACT,
    /** No contact. */
    RACE;

    private static final int STILL_UNMOVED = 24;
    private static final int TRAILS = 40;
    private static final int PRIME = 4;
    private static final int HOME = 6;

    /** The other side's home, in the own numbering. */
    private static final int OTHERS_HOME = Planes.HOME << 18;

    /** The regime of an unfinished position. */
    public static Regime of(Position position) {
        int[] planes = position.toPlanes();
        if (!position.contact()) {
            return RACE;
        }
        if (Planes.rearmost(planes, 0) <= HOME || Planes.rearmost(planes, Planes.SIDE) <= HOME) {
            return BEAR_OFF_CONTACT;
        }
        if (unmoved(position) + unmoved(position.swapped()) >= STILL_UNMOVED) {
            return OPENING;
        }
        if (backGame(planes, 0, Planes.SIDE) || backGame(planes, Planes.SIDE, 0)) {
            return BACK_GAME;
        }
        return primes(planes, 0, Planes.SIDE) || primes(planes, Planes.SIDE, 0) ? PRIMING : CONTACT;
    }

    private static int unmoved(Position position) {
        Position start = Position.start();
        int unmoved = 0;
        for (int point = 1; point < Planes.BAR; point++) {
            unmoved += Math.min(position.count(point), start.count(point));
        }
        return unmoved;
    }

    private static boolean backGame(int[] planes, int side, int other) {
        return Integer.bitCount(Planes.held(planes, side) & OTHERS_HOME) >= 2
                && Planes.pips(planes, side) - Planes.pips(planes, other) >= TRAILS;
    }

    private static boolean primes(int[] planes, int side, int other) {
        int held = Planes.held(planes, side) & Planes.POINTS;
        // The other side's rearmost checker has the lowest number here, 0 on the bar.
        int behind = Planes.BAR - Planes.rearmost(planes, other);
        int rows = held;
        for (int n = 1; n < PRIME; n++) {
            rows &= held >>> n;
        }
        return rows >>> behind + 1 != 0;
    }

    /** As in reports: back game, bear-off contact. */
    public String words() {
        return name().toLowerCase(Locale.ROOT).replace("bear_off", "bear-off").replace('_', ' ');
    }
}
