package org.pipwright.engine.bearoff;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;

/**
 * The six chances of races that the tables cover. Serves one thread.
 *
 * <p>From two distributions: the side on roll wins if it needs no more rolls than the opponent, so its chance is the sum
 * over k of P(it needs k) P(the opponent needs k or more). It wins a gammon if it is done before the opponent has borne
 * off a checker. The two chances assume different play of the loser: to bear off all in the fewest rolls for the win, the
 * first for the gammon.
 */
final class RaceChances {
    private final EndgameTables tables;

    private final Side onRoll = new Side();
    private final Side opponent = new Side();

    /** What is known of one side. */
    private final class Side {
        final double[] all = new double[OneSidedTable.MAX_ROLLS + 1];
        final double[] first = new double[OneSidedTable.MAX_ROLLS + 1];
        int length;
        int firstLength;
        int arrangement = -1;
        boolean noneOff;

        void read(int[] planes, int at) {
            noneOff = (Planes.occupied(planes, at) & 1) == 0;
            OneSidedTable table = tables.oneSided();
            int now = table.index().of(planes, at);
            if (now == arrangement) {
                return;
            }
            arrangement = now;
            int before = length;
            length = table.survival(now, all);
            // Only zeros follow, so that a longer distribution of the other side may read on.
            Arrays.fill(all, length, Math.max(before, length) + 1, 0);
            firstLength = table.survivalToFirst(now, first);
        }

        double noneOffAfter(int rolls) {
            return rolls < firstLength ? first[rolls] : 0;
        }
    }

    RaceChances(EndgameTables tables) {
        this.tables = tables;
    }

    /** Writes the six chances of a position the tables cover, for the side on roll; its basis must not be ESTIMATED. */
    void write(Basis basis, int[] planes, int at, float[] out, int outAt) {
        if (basis == Basis.EXACT) {
            TwoSidedTable table = tables.twoSided();
            double win = table.win(table.index().of(planes, at), table.index().of(planes, at + Planes.SIDE));
            put(win, 0, 0, out, outAt);
            return;
        }
        onRoll.read(planes, at);
        opponent.read(planes, at + Planes.SIDE);
        double win = 0;
        for (int k = 1; k <= onRoll.length; k++) {
            win += (onRoll.all[k - 1] - onRoll.all[k]) * opponent.all[k - 1];
        }
        double winGammon = opponent.noneOff ? gammon(onRoll, opponent, 1) : 0;
        double loseGammon = onRoll.noneOff ? gammon(opponent, onRoll, 0) : 0;
        put(win, winGammon, loseGammon, out, outAt);
    }

    /** Chance that a winner is done before a loser, who rolls that many times fewer, has borne off a checker. */
    private static double gammon(Side winner, Side loser, int fewer) {
        double chance = 0;
        for (int k = 1; k <= winner.length; k++) {
            chance += (winner.all[k - 1] - winner.all[k]) * loser.noneOffAfter(k - fewer);
        }
        return chance;
    }

    private static void put(double win, double winGammon, double loseGammon, float[] out, int at) {
        double gammons = Math.min(winGammon, win);
        double lost = Math.min(loseGammon, 1 - win);
        Arrays.fill(out, at, at + Outcomes.COUNT, 0);
        out[at] = (float) (win - gammons);
        out[at + 1] = (float) gammons;
        out[at + 3] = (float) (1 - win - lost);
        out[at + 4] = (float) lost;
    }
}
