package org.pipwright.engine.explain;

import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** Stages of a game that ask for different things, seen from the side on roll. */
public enum Stage {
    /** Both sides still have to get past each other in the open. */
    CONTACT,
    /** The side on roll has every checker in its own half and brings them home, or off, past what stays behind. */
    CLOSING,
    /** The sides have passed each other. */
    RACE;

    private static final int HALF = 12;

    /**
     * The stage of a position.
     *
     * @param position any position
     * @return the stage
     */
    public static Stage of(Position position) {
        if (!position.contact()) {
            return RACE;
        }
        return Planes.rearmost(position.toPlanes(), 0) <= HALF ? CLOSING : CONTACT;
    }
}
