package org.pipwright.engine.rules;

import org.pipwright.engine.position.Planes;

/**
 * Which of the six outcomes a position still allows, as bits 0 to 5 in the order win single, win gammon, win backgammon,
 * lose single, lose gammon, lose backgammon. Only what follows at once from the rules is ruled out: a side that has borne
 * off a checker cannot lose a gammon or backgammon, and without contact a side with no checker in the other's home or on
 * the bar cannot lose a backgammon, since no checker ever moves back.
 */
public final class PossibleOutcomes {
    /** All six outcomes. */
    public static final int ALL = 0b111111;

    private static final int WIN_GAMMON = 0b000010;
    private static final int WIN_BACKGAMMON = 0b000100;
    private static final int LOSE_GAMMON = 0b010000;
    private static final int LOSE_BACKGAMMON = 0b100000;

    private PossibleOutcomes() {}

    /**
     * The outcomes still possible for an unfinished position.
     *
     * @param planes array that holds the position
     * @param at index of its first plane
     * @return one bit an outcome; winning and losing a single game are always set
     */
    public static int of(int[] planes, int at) {
        int mask = ALL;
        if ((Planes.occupied(planes, at + Planes.SIDE) & 1) != 0) {
            mask &= ~(WIN_GAMMON | WIN_BACKGAMMON);
        }
        if ((Planes.occupied(planes, at) & 1) != 0) {
            mask &= ~(LOSE_GAMMON | LOSE_BACKGAMMON);
        }
        int mine = Planes.rearmost(planes, at);
        int theirs = Planes.rearmost(planes, at + Planes.SIDE);
        if (mine + theirs <= 25) {
            if (theirs < 19) {
                mask &= ~WIN_BACKGAMMON;
            }
            if (mine < 19) {
                mask &= ~LOSE_BACKGAMMON;
            }
        }
        return mask;
    }
}
