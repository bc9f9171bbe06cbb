package org.pipwright.training.settings;

/**
 * A number that is constant at first and then changes linearly.
 *
 * @param first its value at the start
 * @param last its value at the end of the run
 * @param constantShare share of the run, below 1, for which it keeps the first
 */
public record Fall(double first, double last, double constantShare) {
    /**
     * The number at some time of the run.
     *
     * @param progress share of the run that is done, 0 to 1
     * @return between the first and the last value
     */
    public double at(double progress) {
        double fallen = Math.max(0, (progress - constantShare) / (1 - constantShare));
        return first + (last - first) * fallen;
    }
}
