package org.pipwright.engine.statistics;

/**
 * How many standard errors a difference must reach before it counts, if one looks again and again and stops at the first
 * look that shows it. A fixed number of standard errors would be reached by chance sooner or later. The normal mixture
 * boundary (Robbins, Annals of Mathematical Statistics 41 (1970), 1397-1409; as an asymptotic confidence sequence:
 * Waudby-Smith, Arbour, Sinha, Kennedy, Ramdas, 2021; from memory) is crossed at any look whatever, if there is no
 * difference, with a probability of at most alpha:
 *
 * <p>b(n) = sqrt((1 + 1/m) (ln(m + 1) - 2 ln alpha)) with m = n rho^2, n the number of trials.
 *
 * <p>Here alpha is the chance of a single look being off by the chosen number of standard errors, shared out equally among
 * the rivals of the best candidate, and rho makes the boundary lowest at {@value #TIGHTEST} trials.
 */
public final class RepeatedLooks {
    private static final double TIGHTEST = 1000;

    private final double logAlpha;
    private final double perTrial;

    /**
     * A boundary.
     *
     * @param sure standard errors of a single look, more than 0
     * @param rivals number of comparisons made at each look, at least 1
     */
    public RepeatedLooks(double sure, int rivals) {
        if (!(sure > 0) || rivals < 1) {
            throw new IllegalArgumentException(
                    "sure to " + sure + " standard errors against " + rivals + " rivals: both must be positive");
        }
        double log = Math.log(Normal.beyond(sure) / rivals);
        logAlpha = log;
        perTrial = (-2 * log + Math.log(1 - 2 * log)) / TIGHTEST;
    }

    /**
     * How far apart two candidates must be at a look.
     *
     * @param trials number of trials so far, at least 1
     * @return in standard errors of their difference
     */
    public double needed(int trials) {
        double m = trials * perTrial;
        return Math.sqrt((1 + 1 / m) * (Math.log(m + 1) - 2 * logAlpha));
    }
}
