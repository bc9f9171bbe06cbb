package org.pipwright.bench.calibration;

/**
 * Positions whose prediction of some chance lies in a range.
 *
 * @param low lower limit of the range, in [0, 1], included
 * @param high upper limit, not included unless it is 1
 * @param count number of positions
 * @param predicted mean of the predictions; not a number if there are none
 * @param observed share in which it came true; not a number if there are none
 * @param error standard error of their difference; see {@link BinSums#error}
 */
record Bin(double low, double high, long count, double predicted, double observed, double error) {
    /** Observed less predicted: above 0 if it came true more often than predicted. */
    double difference() {
        return observed - predicted;
    }
}
