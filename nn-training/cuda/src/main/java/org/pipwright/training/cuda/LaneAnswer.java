package org.pipwright.training.cuda;

import org.pipwright.engine.evaluation.Chances;

/**
 * What lookahead says of a position and a roll, in points for the side on roll.
 *
 * @param expected mean over all rolls of the best reply's equity
 * @param best equity of the best reply to the roll: the mean of this over all rolls is {@code expected}
 * @param results kept results of the roll, eight ints each, the side that played first
 * @param equities their equities
 */
record LaneAnswer(double expected, double best, int[] results, double[] equities) {
    /** Reads one from a lane that was judged. */
    static LaneAnswer of(PlaysBatch batch, int position) {
        float[] chances = new float[6];
        int kept = batch.kept(position);
        int[] results = new int[8 * kept];
        double[] equities = new double[kept];
        double best = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < kept; k++) {
            batch.chances(position, k, chances, 0);
            batch.result(position, k, results, 8 * k);
            equities[k] = Chances.equity(chances, 0);
            best = Math.max(best, equities[k]);
        }
        return new LaneAnswer(expected(batch, position), best, results, equities);
    }

    /** Equity by lookahead alone. */
    static double expected(PlaysBatch batch, int position) {
        float[] chances = new float[6];
        batch.expected(position, chances, 0);
        return Chances.equity(chances, 0);
    }
}
