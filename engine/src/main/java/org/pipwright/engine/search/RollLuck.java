package org.pipwright.engine.search;

import java.util.Arrays;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.evaluation.Sieve;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * The luck of a roll: the chances after its best reply less their mean over the 21 rolls, both as the evaluator sees them.
 * Whatever the evaluator, luck is 0 on average over the rolls; so taking it off a result leaves the mean of many results
 * where it is and narrows their spread, the more so the better the evaluator (control variates; Ross, Simulation, from
 * memory; of rolls: Montgomery 1998 for races, and Burch, Schmid, Moravcik, Morrill and Bowling, AAAI 2018, in general).
 * Serves one thread.
 */
public final class RollLuck {
    private final Sieve sieve;
    private final Replies replies = new Replies();
    private final double[] sums = new double[Outcomes.COUNT];
    private final double[] changes = new double[Outcomes.COUNT];

    /**
     * A measure of luck.
     *
     * @param evaluator values positions; used by this object only, or between its calls
     */
    public RollLuck(PositionEvaluator evaluator) {
        sieve = Sieve.ofReplies(evaluator);
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
        measure(planes, at, roll, false, out);
    }

    /**
     * Measures the luck of all rolls, which takes as long as that of one.
     *
     * @param planes array that holds the unfinished position, the side on roll first
     * @param at index of its first plane
     * @param out where to write six changes of chances a roll, rolls by their index
     */
    public void measureAll(int[] planes, int at, double[] out) {
        int throwsInAll = sumOverRolls(planes, at, false);
        for (Roll roll : Roll.all()) {
            write(roll, throwsInAll, out, roll.index() * Outcomes.COUNT);
        }
    }

    /**
     * The luck of a roll in points.
     *
     * @param planes array that holds the unfinished position, the side on roll first
     * @param at index of its first plane
     * @param roll the roll
     * @param opening whether it was the first roll of a game, which is never a double
     * @return cubeless points for the side on roll, about -6 to 6; positive is good luck
     * @throws IllegalArgumentException if the roll cannot open a game but is said to
     */
    public double points(int[] planes, int at, Roll roll, boolean opening) {
        if (opening && roll.isDouble()) {
            throw new IllegalArgumentException(roll + " cannot be the first roll of a game: doubles are thrown again");
        }
        measure(planes, at, roll, opening, changes);
        return changes[0] + 2 * changes[1] + 3 * changes[2] - changes[3] - 2 * changes[4] - 3 * changes[5];
    }

    /** What a reply to a roll is worth to the side that plays it, in any unit. */
    @FunctionalInterface
    public interface Worth {
        /**
         * The worth of a reply.
         *
         * @param results results of rolls, the mover's side first
         * @param at index of the first plane of the reply's
         * @param chances six chances a result, for the mover
         * @param chancesAt index of the first of the reply's
         * @return the higher, the better for the mover
         */
        double of(int[] results, int at, float[] chances, int chancesAt);
    }

    /**
     * The luck of a roll in another measure than cubeless points. The replies are still those with the highest cubeless
     * points: which they are does not matter, as long as it does not depend on the dice that follow.
     *
     * @param planes array that holds the unfinished position, the side on roll first
     * @param at index of its first plane
     * @param roll the roll
     * @param opening whether it was the first roll of a game, which is never a double
     * @param worth what a reply is worth
     * @return worth after the reply to this roll less its mean over all rolls there could have been
     */
    public double measure(int[] planes, int at, Roll roll, boolean opening, Worth worth) {
        replies.expand(planes, at, 0, Roll.COUNT, sieve, Columns.NONE);
        double sum = 0;
        double rolled = 0;
        int throwsInAll = 0;
        for (int r = 0; r < Roll.COUNT; r++) {
            Roll other = Roll.all().get(r);
            int ways = opening && other.isDouble() ? 0 : other.ways();
            if (ways == 0) {
                continue;
            }
            int best = replies.best(r, Columns.CUBELESS);
            double value = worth.of(replies.results(), best * Planes.STRIDE, replies.chances(), best * Outcomes.COUNT);
            throwsInAll += ways;
            sum += ways * value;
            rolled = r == roll.index() ? value : rolled;
        }
        return rolled - sum / throwsInAll;
    }

    private void measure(int[] planes, int at, Roll roll, boolean opening, double[] out) {
        write(roll, sumOverRolls(planes, at, opening), out, 0);
    }

    /** Leaves the sums over the throws of two dice that there could have been; returns how many these are. */
    private int sumOverRolls(int[] planes, int at, boolean opening) {
        replies.expand(planes, at, 0, Roll.COUNT, sieve, Columns.NONE);
        float[] chances = replies.chances();
        Arrays.fill(sums, 0);
        int throwsInAll = 0;
        for (int r = 0; r < Roll.COUNT; r++) {
            int best = replies.best(r, Columns.CUBELESS) * Outcomes.COUNT;
            Roll roll = Roll.all().get(r);
            int ways = opening && roll.isDouble() ? 0 : roll.ways();
            throwsInAll += ways;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                sums[k] += ways * (double) chances[best + k];
            }
        }
        return throwsInAll;
    }

    private void write(Roll roll, int throwsInAll, double[] out, int outAt) {
        int best = replies.best(roll.index(), Columns.CUBELESS) * Outcomes.COUNT;
        for (int k = 0; k < Outcomes.COUNT; k++) {
            out[outAt + k] = replies.chances()[best + k] - sums[k] / throwsInAll;
        }
    }
}
