package org.pipwright.engine.match;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/** Plays what an evaluator gives the highest cubeless equity, the first of equals. */
public final class EvaluatingPlayer implements Player {
    private final PositionEvaluator evaluator;
    private float[] chances = new float[256 * Outcomes.COUNT];
    private int best;

    /**
     * A player.
     *
     * @param evaluator what it thinks with
     */
    public EvaluatingPlayer(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        int count = legal.size();
        if (chances.length < count * Outcomes.COUNT) {
            chances = new float[2 * count * Outcomes.COUNT];
        }
        evaluator.evaluateResults(planes, at, legal.results(), count, chances);
        best = 0;
        float highest = Float.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            float equity = equity(i);
            if (equity > highest) {
                highest = equity;
                best = i;
            }
        }
        return best;
    }

    /**
     * The equity of one of the plays that the last choice was among.
     *
     * @param result its index
     * @return points per game, cubeless, for the side that played
     */
    public float equity(int result) {
        return Chances.equity(chances, result * Outcomes.COUNT);
    }

    /**
     * The six chances of the play chosen last, for the side that played it.
     *
     * @return a fresh array of six
     */
    public float[] chancesOfChoice() {
        return Arrays.copyOfRange(chances, best * Outcomes.COUNT, (best + 1) * Outcomes.COUNT);
    }
}
