package org.pipwright.engine.match;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Dice;

/** Always takes the largest lead in the pip count, ties broken at random: the baseline {@code pips}. */
public final class PipLeader implements Player {
    /** Creates one. */
    public PipLeader() {}

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        int[] results = legal.results();
        int most = Integer.MIN_VALUE;
        int equals = 0;
        int chosen = 0;
        for (int i = 0; i < legal.size(); i++) {
            int base = i * Planes.STRIDE;
            int lead = Planes.pips(results, base + Planes.SIDE) - Planes.pips(results, base);
            if (lead > most) {
                most = lead;
                equals = 0;
            }
            // Keeping the n-th of equals with chance 1/n leaves each equally likely.
            if (lead == most && ties.below(++equals) == 0) {
                chosen = i;
            }
        }
        return chosen;
    }
}
