package org.pipwright.engine.measures;

import org.pipwright.engine.statistics.Normal;

/**
 * Kleinman's estimate of a race from the pip counts alone (Danny Kleinman, Vision Laughs at Counting; year, 1980, from
 * memory, place not noted). With D the opponent's pips less the roller's plus 4, and S their sum less
 * 4, the measure is K = D^2 / S, and the roller's chance to win is the normal distribution function at sqrt(K / 2), or at
 * its negative if D is negative.
 */
public final class Kleinman {
    private Kleinman() {}

    /**
     * Kleinman's measure.
     *
     * @param roller pips of the side on roll, at least 1
     * @param opponent pips of the opponent, at least 1
     * @return K, with the sign of D; infinite if both sides have so few pips that S is not positive
     */
    public static double measure(int roller, int opponent) {
        double lead = opponent - roller + 4;
        double sum = Math.max(0, roller + opponent - 4);
        return Math.signum(lead) * lead * lead / sum;
    }

    /**
     * Chance of the side on roll to win.
     *
     * @param roller its pips, at least 1
     * @param opponent pips of the opponent, at least 1
     * @return in [0, 1]
     */
    public static double win(int roller, int opponent) {
        double k = measure(roller, opponent);
        return Double.isNaN(k) ? 0.5 : Normal.below(Math.signum(k) * Math.sqrt(Math.abs(k) / 2));
    }
}
