package org.pipwright.engine.bearoff;

import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Horizon;

/** Ends games where the tables know their chances. Serves one thread; the tables may be shared. */
public final class TableHorizon implements Horizon {
    private final EndgameTables tables;
    private final Basis weakest;
    private final RaceChances races;

    /**
     * A horizon.
     *
     * @param tables what is known
     * @param weakest EXACT to end games at the two-sided table only, DISTRIBUTIONS to end them wherever both sides'
     *     distributions are known; ESTIMATED means the same
     */
    public TableHorizon(EndgameTables tables, Basis weakest) {
        this.tables = tables;
        this.weakest = weakest;
        this.races = new RaceChances(tables);
    }

    @Override
    public boolean write(int[] planes, int at, float[] out, int outAt) {
        Basis basis = tables.basis(planes, at);
        if (basis == Basis.ESTIMATED || basis.compareTo(weakest) > 0) {
            return false;
        }
        races.write(basis, planes, at, out, outAt);
        return true;
    }
}
