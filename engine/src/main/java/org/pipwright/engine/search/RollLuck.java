package org.pipwright.engine.search;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.roll.Roll;

/**
 * The luck of a roll: the chances after its best reply less their mean over the 21 rolls, both as the evaluator sees them.
 * Whatever the evaluator, luck is 0 on average over the rolls; so taking it off a result leaves the mean of many results
 * where it is and narrows their spread, the more so the better the evaluator (control variates; Ross, Simulation, from
 * memory). Serves one thread.
 */
public final class RollLuck {
    private final PositionEvaluator evaluator;
    private final Replies replies = new Replies();
    private final double[] sums = new double[Outcomes.COUNT];

    /**
     * A measure of luck.
     *
     * @param evaluator values positions; used by this object only, or between its calls
     */
    public RollLuck(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    /**
     * Measures the luck of a roll.
     *
     * @param planes array that holds the unfinished position, the side on roll first
     * @param at index of its first plane
     * @param roll the roll
     * @param out where to write six changes of chances, for the side on roll; they add up to 0
     */
    public void measure(int[] planes, int at, Roll roll, double[] out) {
        replies.expand(planes, at, 0, Roll.COUNT, evaluator);
        float[] chances = replies.chances();
        Arrays.fill(sums, 0);
        int rolled = 0;
        for (int r = 0; r < Roll.COUNT; r++) {
            int best = replies.best(r, Objective.CUBELESS) * Outcomes.COUNT;
            int ways = Roll.all().get(r).ways();
            for (int k = 0; k < Outcomes.COUNT; k++) {
                sums[k] += ways * (double) chances[best + k];
            }
            rolled = r == roll.index() ? best : rolled;
        }
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[k] = chances[rolled + k] - sums[k] / RollMean.THROWS;
        }
    }
}
