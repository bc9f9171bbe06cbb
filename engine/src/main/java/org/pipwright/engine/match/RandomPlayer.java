package org.pipwright.engine.match;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/** Takes each legal result with the same chance: the baseline {@code random}. */
public final class RandomPlayer implements Player {
    /** Creates one. */
    public RandomPlayer() {}

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        return ties.below(legal.size());
    }
}
