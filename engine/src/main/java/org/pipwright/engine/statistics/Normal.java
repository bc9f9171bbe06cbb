package org.pipwright.engine.statistics;

import org.apache.commons.math3.special.Erf;

/** The standard normal distribution, by the error function of Commons Math. */
public final class Normal {
    private Normal() {}

    /**
     * Chance of a value below x.
     *
     * @param x any number, or infinite
     * @return in [0, 1]
     */
    public static double below(double x) {
        return Erf.erfc(-x / Math.sqrt(2)) / 2;
    }

    /**
     * Chance of a value further than x from 0, on either side.
     *
     * @param x at least 0
     * @return in [0, 1], with nine right digits even where it is small
     */
    public static double beyond(double x) {
        return Erf.erfc(x / Math.sqrt(2));
    }
}
