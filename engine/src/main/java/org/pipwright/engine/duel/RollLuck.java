package org.pipwright.engine.duel;

import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * The luck of a roll: the equity after the best play of the roll, less the mean of the same over all rolls it could have
 * been, weighted by their chances, as an evaluator sees it. Whatever the evaluator, its mean is 0 before the roll, so that
 * a game's result less the luck in it has the same mean as the result itself, and the less variance the better the
 * evaluator: a control variate (Montgomery 1998 for races; Burch, Schmid, Moravcik, Morrill and Bowling, AAAI 2018, in
 * general).
 *
 * <p>Keeps buffers, so an instance serves one thread.
 */
public final class RollLuck {
    private final PositionEvaluator evaluator;
    private final PlayGenerator generator = new PlayGenerator();
    private final int[] ends = new int[Roll.COUNT];
    private int[] results = new int[1024 * Planes.STRIDE];
    private float[] chances = new float[1024 * Outcomes.COUNT];

    /**
     * Luck as an evaluator sees it.
     *
     * @param evaluator values the positions after the plays; cubeless equity is taken from its chances
     */
    public RollLuck(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    /**
     * The luck of a roll.
     *
     * @param planes array that holds the unfinished position before the roll
     * @param at index of its first plane
     * @param roll what was rolled
     * @param opening whether it was the first roll of a game, which is never a double
     * @return points for the side on roll, about -6 to 6; positive is good luck
     * @throws IllegalArgumentException if the roll cannot open a game but is said to
     */
    public double of(int[] planes, int at, Roll roll, boolean opening) {
        if (opening && roll.isDouble()) {
            throw new IllegalArgumentException(roll + " cannot be the first roll of a game: doubles are thrown again");
        }
        List<Roll> rolls = opening ? Roll.opening() : Roll.all();
        generateAll(planes, at, rolls);
        evaluator.evaluateResults(planes, at, results, ends[rolls.size() - 1], chances);
        double weighted = 0;
        int ways = 0;
        double own = 0;
        int from = 0;
        for (int i = 0; i < rolls.size(); i++) {
            double value = best(from, ends[i]);
            from = ends[i];
            ways += rolls.get(i).ways();
            weighted += value * rolls.get(i).ways();
            own = rolls.get(i) == roll ? value : own;
        }
        return own - weighted / ways;
    }

    /** The results of all rolls one after another, so that the evaluator sees them in one call. */
    private void generateAll(int[] planes, int at, List<Roll> rolls) {
        int total = 0;
        for (int i = 0; i < rolls.size(); i++) {
            Roll roll = rolls.get(i);
            int count = generator.generate(planes, at, roll.high(), roll.low());
            makeRoom(total + count);
            System.arraycopy(generator.results(), 0, results, total * Planes.STRIDE, count * Planes.STRIDE);
            total += count;
            ends[i] = total;
        }
    }

    private void makeRoom(int count) {
        if (count * Planes.STRIDE > results.length) {
            results = Arrays.copyOf(results, 2 * count * Planes.STRIDE);
            chances = Arrays.copyOf(chances, 2 * count * Outcomes.COUNT);
        }
    }

    private double best(int from, int to) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            highest = Math.max(highest, Chances.equity(chances, i * Outcomes.COUNT));
        }
        return highest;
    }
}
