package org.pipwright.engine.explain;

import org.pipwright.engine.measures.Structure;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * How a board stands for one side ("mine").
 *
 * @param mine my structure, points counted from my home
 * @param theirs the opponent's structure, points counted from its home
 * @param prime my prime against the opponent
 * @param theirPrime the opponent's prime against me
 * @param pips my pip count
 * @param theirPips the opponent's
 * @param contact whether the sides still have to pass each other
 */
public record BoardFacts(
        Structure mine, Structure theirs, Prime prime, Prime theirPrime, int pips, int theirPips, boolean contact) {
    /**
     * The facts of a board.
     *
     * @param position a position whose first side is mine
     * @return the facts
     */
    public static BoardFacts of(Position position) {
        int[] planes = position.toPlanes();
        return new BoardFacts(
                Structure.of(planes, 0),
                Structure.of(planes, Planes.SIDE),
                Prime.of(planes, 0, Planes.SIDE),
                Prime.of(planes, Planes.SIDE, 0),
                position.pips(),
                position.opponentPips(),
                position.contact());
    }

    /**
     * My lead in the race.
     *
     * @return the opponent's pips less mine; negative if I am behind
     */
    public int lead() {
        return theirPips - pips;
    }
}
