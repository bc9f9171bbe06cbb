package org.pipwright.engine.drill;

import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
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

    private final PositionEvaluator evaluator;
    private float[] chances = new float[256 * Outcomes.COUNT];

    LoosePlayer(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        int count = legal.size();
        if (chances.length < count * Outcomes.COUNT) {
            chances = new float[2 * count * Outcomes.COUNT];
        }
        evaluator.evaluateResults(planes, at, legal.results(), count, chances);
        int best = 0;
        for (int i = 1; i < count; i++) {
            best = equity(i) > equity(best) ? i : best;
        }
        return ties.below(EVERY) > 0 ? best : oneOf(count, equity(best) - LIMIT, ties);
    }

    /** Keeping the n-th of the good ones with chance 1/n leaves each equally likely. */
    private int oneOf(int count, float least, Dice ties) {
        int good = 0;
        int chosen = 0;
        for (int i = 0; i < count; i++) {
            if (equity(i) > least && ties.below(++good) == 0) {
                chosen = i;
            }
        }
        return chosen;
    }

    private float equity(int result) {
        return Chances.equity(chances, result * Outcomes.COUNT);
    }
}
