package org.pipwright.cli.report;

import org.pipwright.engine.bearoff.Basis;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;

/** What the chances in reports rest on. */
public final class Bases {
    private Bases() {}

    /**
     * Whether a position is a race that the standard tables do not cover, as can be simulated.
     *
     * @param position any position
     * @return false while there is contact, and for finished games
     */
    public static boolean beyondTables(Position position) {
        return !position.contact() && EndgameTables.standardBasis(position) == Basis.ESTIMATED;
    }

    /**
     * What the chances of a position rest on: games played out are estimates, whatever they start from.
     *
     * @param position any position
     * @param depth how deeply it was evaluated
     * @param simulated whether races beyond the tables were simulated
     */
    static Basis of(Position position, Depth depth, boolean simulated) {
        if (depth.games() > 0) {
            return Basis.ESTIMATED;
        }
        return simulated && beyondTables(position) ? Basis.SIMULATED : EndgameTables.standardBasis(position);
    }
}
