package org.pipwright.engine.match;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.evaluation.Sieve;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Dice;

/** Plays what an evaluator gives the highest cubeless equity, the first of equals. */
public final class EvaluatingPlayer implements Player {
    private final Sieve sieve;
    private float[] chances = new float[256 * Outcomes.COUNT];
    private double[] equities = new double[256];
    private int best;

    /**
     * A player.
     *
     * @param evaluator what it thinks with
     */
    public EvaluatingPlayer(PositionEvaluator evaluator) {
        sieve = Sieve.ofPlays(evaluator);
    }

    @Override
    public int choose(int[] planes, int at, PlayGenerator legal, Dice ties) {
        int count = legal.size();
        if (chances.length < count * Outcomes.COUNT) {
            chances = new float[2 * count * Outcomes.COUNT];
            equities = new double[2 * count];
        }
        best = sieve.best(planes, at, legal.results(), count, chances, equities);
        return best;
    }

    /**
     * The equity of one of the plays that the last choice was among.
     *
     * @param result its index
     * @return points per game, cubeless, for the side that played; minus infinity if the evaluator's quick one dropped it
     */
    public float equity(int result) {
        return (float) equities[result];
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
