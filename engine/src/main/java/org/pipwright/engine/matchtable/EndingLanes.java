package org.pipwright.engine.matchtable;

/**
 * How values lie in memory, and the mean over the rolls. Values in [0, 1] are kept as whole numbers up to 2^31 - 1, to
 * 2.3e-10: half the memory of doubles, whose first touch takes more time than all the arithmetic. Lanes are gone through
 * four at a time, so that their sums stay in registers; pairs have room for whole fours.
 */
final class EndingLanes {
    private static final int ONE = Integer.MAX_VALUE;
    private static final int TOGETHER = 4;
    private static final double PER_THROW = 1 / (36.0 * ONE);

    private final int width;

    EndingLanes(int lanes) {
        width = (lanes + TOGETHER - 1) / TOGETHER * TOGETHER;
    }

    /** Lanes of a pair, those that only fill it up included. */
    int width() {
        return width;
    }

    /** Writes the lanes of a pair into a row. */
    void write(double[] values, int[] row, int pair) {
        int at = pair * width;
        for (int lane = 0; lane < width; lane++) {
            row[at + lane] = (int) (values[lane] * ONE + 0.5);
        }
    }

    /** Reads the lanes of a pair. */
    void read(int[] row, int pair, double[] values) {
        for (int lane = 0; lane < width; lane++) {
            values[lane] = (double) row[pair * width + lane] / ONE;
        }
    }

    /**
     * Writes what a pair is worth to the other side.
     *
     * @param from row of the pair
     * @param pair its place there
     * @param swapped by lane, the lane that the other side sees
     * @param to row to write to
     * @param place in it
     */
    void mirror(int[] from, int pair, int[] swapped, int[] to, int place) {
        for (int lane = 0; lane < swapped.length; lane++) {
            to[place * width + lane] = ONE - from[pair * width + swapped[lane]];
        }
    }

    /**
     * Mean of the most that the first side's rolls leave it.
     *
     * @param rolls of the first side
     * @param sure the rows of {@link EndingRolls#sure()}
     * @param choices those of {@link EndingRolls#choices()}
     * @param pair place in the rows
     * @param out all lanes
     */
    void most(EndingRolls rolls, int[][] sure, int[][][] choices, int pair, double[] out) {
        for (int lane = 0; lane < width; lane += TOGETHER) {
            int at = pair * width + lane;
            long sum0 = 0;
            long sum1 = 0;
            long sum2 = 0;
            long sum3 = 0;
            int[] ways = rolls.sureWays();
            for (int i = 0; i < ways.length; i++) {
                int[] row = sure[i];
                long times = ways[i];
                sum3 += times * row[at + 3];
                sum2 += times * row[at + 2];
                sum1 += times * row[at + 1];
                sum0 += times * row[at];
            }
            ways = rolls.choiceWays();
            for (int i = 0; i < ways.length; i++) {
                int most0 = 0;
                int most1 = 0;
                int most2 = 0;
                int most3 = 0;
                for (int[] row : choices[i]) {
                    most3 = most(most3, row[at + 3]);
                    most2 = most(most2, row[at + 2]);
                    most1 = most(most1, row[at + 1]);
                    most0 = most(most0, row[at]);
                }
                long times = ways[i];
                sum0 += times * most0;
                sum1 += times * most1;
                sum2 += times * most2;
                sum3 += times * most3;
            }
            out[lane] = sum0 * PER_THROW;
            out[lane + 1] = sum1 * PER_THROW;
            out[lane + 2] = sum2 * PER_THROW;
            out[lane + 3] = sum3 * PER_THROW;
        }
    }

    /**
     * Mean of the least that the second side's rolls leave the first.
     *
     * @param rolls of the second side
     * @param row where their results are
     * @param out all lanes
     */
    void least(EndingRolls rolls, int[] row, double[] out) {
        for (int lane = 0; lane < width; lane += TOGETHER) {
            long sum0 = 0;
            long sum1 = 0;
            long sum2 = 0;
            long sum3 = 0;
            int[] sure = rolls.sure();
            int[] ways = rolls.sureWays();
            for (int i = 0; i < sure.length; i++) {
                int at = sure[i] * width + lane;
                long times = ways[i];
                sum3 += times * row[at + 3];
                sum2 += times * row[at + 2];
                sum1 += times * row[at + 1];
                sum0 += times * row[at];
            }
            int[][] choices = rolls.choices();
            ways = rolls.choiceWays();
            for (int i = 0; i < ways.length; i++) {
                int least0 = ONE;
                int least1 = ONE;
                int least2 = ONE;
                int least3 = ONE;
                for (int result : choices[i]) {
                    int at = result * width + lane;
                    least3 = least(least3, row[at + 3]);
                    least2 = least(least2, row[at + 2]);
                    least1 = least(least1, row[at + 1]);
                    least0 = least(least0, row[at]);
                }
                long times = ways[i];
                sum0 += times * least0;
                sum1 += times * least1;
                sum2 += times * least2;
                sum3 += times * least3;
            }
            out[lane] = sum0 * PER_THROW;
            out[lane + 1] = sum1 * PER_THROW;
            out[lane + 2] = sum2 * PER_THROW;
            out[lane + 3] = sum3 * PER_THROW;
        }
    }

    /** The larger of two numbers, neither negative, without a branch, which a processor would often guess wrong here. */
    private static int most(int one, int other) {
        int more = other - one;
        return one + (more & ~(more >> 31));
    }

    /** The smaller of two numbers, neither negative. */
    private static int least(int one, int other) {
        int more = other - one;
        return one + (more & more >> 31);
    }
}
