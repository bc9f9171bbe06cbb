package org.pipwright.engine.evaluation;

import java.util.Arrays;
import org.pipwright.engine.position.Planes;

/**
 * Values the results of rolls where only the best of each roll counts. The evaluator's quick one values all of them first;
 * of the results of a roll, those that it puts close to its best, and not too many of them, are judged by the evaluator
 * itself. The others are dropped: they are worth minus infinity. An evaluator without a quick one judges everything.
 *
 * <p>Where results are worth something else in several columns, each column drops results for itself, so what is left in one
 * does not depend on the others; nor does it depend on which rolls are asked about together. Serves one thread.
 */
public final class Sieve {
    /** How far behind the quick evaluator's best a play to be made may be, in points per game. */
    static final float WITHIN = 0.12f;

    /** How many plays to choose from are judged at most. */
    static final int MAX_PLAYS = 8;

    /** The same for replies, of which a mean over all rolls is taken: there a close miss hardly counts. */
    static final float REPLIES_WITHIN = 0.08f;

    /** How many replies to a roll are judged at most, in each column. */
    static final int MAX_REPLIES = 4;

    /** The same for replies to replies: a search values twenty times as many of them. */
    static final float LATER_WITHIN = 0.06f;

    /** How many replies to a roll are judged at most there, in each column. */
    static final int MAX_LATER = 2;

    /** Evaluators may write this many results more than they are asked for. */
    private static final int SPARE = 3;

    private final PositionEvaluator evaluator;
    private final PositionEvaluator quick;
    private final float within;
    private final int most;

    private final int[] kept;

    /** Whether a result stays in a column. */
    private boolean[] stays = new boolean[512];

    /** Those that stay in any, side by side, each once: different rolls may lead to the same position. */
    private int[] left = new int[64 * Planes.STRIDE];

    private int[] leftHashes = new int[64];
    private int leftSize;
    private float[] leftChances = new float[(64 + SPARE) * Outcomes.COUNT];

    /** Where each result lies among them, -1 where it stays in no column. */
    private int[] placeOf = new int[512];

    /** What results are worth to the side that plays, a number a column. */
    public interface Worth {
        /** Points without the cube: a single column. */
        Worth POINTS = new Worth() {
            @Override
            public int width() {
                return 1;
            }

            @Override
            public void worth(int[] results, int at, float[] chances, int chancesAt, double[] worth, int worthAt) {
                worth[worthAt] = Chances.equity(chances, chancesAt);
            }

            @Override
            public double least(int column, double best, float within) {
                // Points are floats, and so is the bound.
                return (float) best - within;
            }
        };

        /**
         * Number of columns.
         *
         * @return at least 1
         */
        int width();

        /**
         * Writes what a result is worth in each column.
         *
         * @param results results of a roll, the mover's side first
         * @param at index of the first plane of the result's
         * @param chances six chances of the mover after it
         * @param chancesAt index of the first of them
         * @param worth where to write a number a column
         * @param worthAt index of the first of them
         */
        void worth(int[] results, int at, float[] chances, int chancesAt, double[] worth, int worthAt);

        /**
         * The least that is close to the best.
         *
         * @param column the column
         * @param best what the best result is worth in it
         * @param within how far behind a result may be, in points per game
         * @return the same in the column's own unit
         */
        double least(int column, double best, float within);
    }

    /**
     * A sieve for plays to choose from.
     *
     * @param evaluator what judges, and whose quick one drops results
     * @return a sieve that is wide enough to cost hardly any strength
     */
    public static Sieve ofPlays(PositionEvaluator evaluator) {
        return new Sieve(evaluator, WITHIN, MAX_PLAYS);
    }

    /**
     * A sieve for replies, of which a mean over all rolls is taken.
     *
     * @param evaluator what judges, and whose quick one drops results
     * @return a narrower sieve
     */
    public static Sieve ofReplies(PositionEvaluator evaluator) {
        return new Sieve(evaluator, REPLIES_WITHIN, MAX_REPLIES);
    }

    /**
     * A sieve for replies to replies, of which a search values the most.
     *
     * @param evaluator what judges, and whose quick one drops results
     * @return the narrowest
     */
    public static Sieve ofLaterReplies(PositionEvaluator evaluator) {
        return new Sieve(evaluator, LATER_WITHIN, MAX_LATER);
    }

    Sieve(PositionEvaluator evaluator, float within, int most) {
        this.evaluator = evaluator;
        this.within = within;
        this.most = most;
        quick = evaluator.quick();
        kept = new int[most];
    }

    /**
     * Judges the results of rolls that may be the best of theirs.
     *
     * @param parent array that holds the position before the play
     * @param parentAt index of its first plane
     * @param results the results of all rolls one after another, the mover's side first, as the play generator gives them
     * @param starts where the results of each roll begin; those of the last end where the next would begin
     * @param first index of the first roll, whose results begin at 0
     * @param end index after the last roll
     * @param columns what results are worth
     * @param chances where to write six chances a result, for the mover; those of results dropped mean nothing
     * @param worth where to write a number a result and column; minus infinity where the result is dropped
     * @return number of results judged, each position once
     */
    public int judge(
            int[] parent,
            int parentAt,
            int[] results,
            int[] starts,
            int first,
            int end,
            Worth columns,
            float[] chances,
            double[] worth) {
        int count = starts[end];
        if (quick == evaluator) {
            judgeAll(parent, parentAt, results, count, columns, chances, worth);
            return count;
        }
        int width = columns.width();
        if (stays.length < count * width) {
            stays = new boolean[2 * count * width];
        }
        if (placeOf.length < count) {
            placeOf = new int[2 * count];
        }
        boolean forced = count == end - first;
        Arrays.fill(stays, 0, count * width, forced);
        if (!forced) {
            value(quick, parent, parentAt, results, count, columns, chances, worth);
            for (int roll = first; roll < end; roll++) {
                for (int column = 0; column < width; column++) {
                    sift(starts[roll], starts[roll + 1], columns, column, worth);
                }
            }
        }
        gather(results, count, width);
        evaluator.evaluateResults(parent, parentAt, left, leftSize, leftChances);
        take(results, count, columns, chances, worth);
        for (int i = 0; i < count * width; i++) {
            worth[i] = stays[i] ? worth[i] : Double.NEGATIVE_INFINITY;
        }
        return leftSize;
    }

    /**
     * Judges the results of a single roll that may be its best for points without the cube.
     *
     * @param parent array that holds the position before the play
     * @param parentAt index of its first plane
     * @param results the results one after another, the mover's side first, as the play generator gives them
     * @param count number of results
     * @param chances where to write six chances a result, for the mover; those of results dropped mean nothing
     * @param worth where to write points a result; minus infinity where the result is dropped
     * @return index of the best result, the first of equals
     */
    public int best(int[] parent, int parentAt, int[] results, int count, float[] chances, double[] worth) {
        judge(parent, parentAt, results, new int[] {0, count}, 0, 1, Worth.POINTS, chances, worth);
        int best = 0;
        for (int i = 1; i < count; i++) {
            best = worth[i] > worth[best] ? i : best;
        }
        return best;
    }

    /**
     * Judges all results.
     *
     * @param parent array that holds the position before the play
     * @param parentAt index of its first plane
     * @param results the results one after another, the mover's side first, as the play generator gives them
     * @param count number of results
     * @param columns what results are worth
     * @param chances where to write six chances a result, for the mover
     * @param worth where to write a number a result and column
     */
    public void judgeAll(
            int[] parent, int parentAt, int[] results, int count, Worth columns, float[] chances, double[] worth) {
        value(evaluator, parent, parentAt, results, count, columns, chances, worth);
    }

    private static void value(
            PositionEvaluator evaluator,
            int[] parent,
            int parentAt,
            int[] results,
            int count,
            Worth columns,
            float[] chances,
            double[] worth) {
        evaluator.evaluateResults(parent, parentAt, results, count, chances);
        for (int i = 0; i < count; i++) {
            columns.worth(results, i * Planes.STRIDE, chances, i * Outcomes.COUNT, worth, i * columns.width());
        }
    }

    /** Marks what stays of one roll in one column: an insertion sort of the first {@link #most}, then the limit. */
    private void sift(int from, int to, Worth columns, int column, double[] worth) {
        int width = columns.width();
        int size = 0;
        for (int i = from; i < to; i++) {
            double mine = worth[i * width + column];
            int place = size;
            while (place > 0 && mine > worth[kept[place - 1] * width + column]) {
                place--;
            }
            if (place < most) {
                size = Math.min(size + 1, most);
                System.arraycopy(kept, place, kept, place + 1, size - 1 - place);
                kept[place] = i;
            }
        }
        double least = columns.least(column, worth[kept[0] * width + column], within);
        for (int k = 0; k < size; k++) {
            int at = kept[k] * width + column;
            stays[at] = k == 0 || worth[at] >= least;
        }
    }

    /** Puts those that stay in any column side by side. */
    private void gather(int[] results, int count, int width) {
        leftSize = 0;
        for (int i = 0; i < count; i++) {
            boolean any = false;
            for (int column = 0; column < width; column++) {
                any |= stays[i * width + column];
            }
            placeOf[i] = any ? place(results, i * Planes.STRIDE) : -1;
        }
    }

    /** Where a result lies among those that stay, as the last of them if it is new. */
    private int place(int[] results, int at) {
        int hash = 0;
        for (int k = at; k < at + Planes.STRIDE; k++) {
            hash = 31 * hash + results[k];
        }
        for (int k = 0; k < leftSize; k++) {
            if (leftHashes[k] == hash && isAt(k * Planes.STRIDE, results, at)) {
                return k;
            }
        }
        if (leftSize == leftHashes.length) {
            leftHashes = Arrays.copyOf(leftHashes, 2 * leftSize);
            left = Arrays.copyOf(left, leftHashes.length * Planes.STRIDE);
            leftChances = new float[(leftHashes.length + SPARE) * Outcomes.COUNT];
        }
        leftHashes[leftSize] = hash;
        System.arraycopy(results, at, left, leftSize * Planes.STRIDE, Planes.STRIDE);
        return leftSize++;
    }

    private boolean isAt(int from, int[] results, int at) {
        return Arrays.equals(left, from, from + Planes.STRIDE, results, at, at + Planes.STRIDE);
    }

    private void take(int[] results, int count, Worth columns, float[] chances, double[] worth) {
        for (int i = 0; i < count; i++) {
            if (placeOf[i] >= 0) {
                int at = i * Outcomes.COUNT;
                System.arraycopy(leftChances, placeOf[i] * Outcomes.COUNT, chances, at, Outcomes.COUNT);
                columns.worth(results, i * Planes.STRIDE, chances, at, worth, i * columns.width());
            }
        }
    }
}
