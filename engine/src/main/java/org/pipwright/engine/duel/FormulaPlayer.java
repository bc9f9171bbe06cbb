package org.pipwright.engine.duel;

import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Dice;

/** Plays what a formula scores highest, the first of equals. */
final class FormulaPlayer implements Player {
    private final Formula formula;

    /** Scores the result of a play. */
    @FunctionalInterface
    interface Formula {
        /**
         * Scores a position.
         *
         * @param planes array that holds the position after the play
         * @param me index of the mover's plane 0
         * @param them index of the other side's plane 0
         * @return the higher, the better for the mover; only the order counts
         */
        double score(int[] planes, int me, int them);
    }

    FormulaPlayer(Formula formula) {
        this.formula = formula;
    }

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        int best = 0;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < legal.size(); i++) {
            int me = i * Planes.STRIDE;
            double score = formula.score(legal.results(), me, me + Planes.SIDE);
            if (score > highest) {
                highest = score;
                best = i;
            }
        }
        return best;
    }
}
