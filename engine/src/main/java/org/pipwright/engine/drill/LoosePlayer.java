package org.pipwright.engine.drill;

import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/**
 * Plays what an evaluator likes best, but every fourth time any play that costs less than 0.1 points: sensible games that
 * differ as those of people do. Both numbers are our own choice.
 */
final class LoosePlayer implements Player {
    private static final int EVERY = 4;
    private static final float LIMIT = 0.1f;

    private final EvaluatingPlayer likes;

    LoosePlayer(PositionEvaluator evaluator) {
        likes = new EvaluatingPlayer(evaluator);
    }

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        int best = likes.choose(planes, at, legal, ties);
        return ties.below(EVERY) > 0 ? best : oneOf(legal.size(), likes.equity(best) - LIMIT, ties);
    }

    /** Keeping the n-th of the good ones with chance 1/n leaves each equally likely. */
    private int oneOf(int count, float least, Dice ties) {
        int good = 0;
        int chosen = 0;
        for (int i = 0; i < count; i++) {
            if (likes.equity(i) > least && ties.below(++good) == 0) {
                chosen = i;
            }
        }
        return chosen;
    }
}
