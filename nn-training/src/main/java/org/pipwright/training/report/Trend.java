package org.pipwright.training.report;

import java.util.List;
import java.util.Locale;

/**
 * Whether strength still rises: a straight line through the later half of the evaluations, over the logarithm of how much had
 * been learned from, each weighed by its error. Where the errors are independent of each other, the slope has one too.
 *
 * @param evaluations how many the line goes through
 * @param slope points gained with each doubling
 * @param error standard error of the slope; infinite if there were too few evaluations
 */
public record Trend(int evaluations, double slope, double error) {
    /** With fewer evaluations there is no half to speak of. */
    private static final int FEWEST = 6;

    /** One-sided at 5 in a hundred: a standard normal number exceeds this so often. */
    private static final double RISING = 1.645;

    /**
     * An evaluation.
     *
     * @param learned games or targets until then
     * @param points strength
     * @param error standard error of the points
     */
    public record Stand(double learned, double points, double error) {
        private double weight() {
            return 1 / (error * error);
        }

        private double at() {
            return Math.log(learned) / Math.log(2);
        }
    }

    /**
     * Fits the line.
     *
     * @param stands the evaluations, oldest first; those without an error, or before anything was learned, are left out
     * @return the trend
     */
    public static Trend of(List<Stand> stands) {
        List<Stand> known = stands.stream()
                .filter(stand -> stand.error() > 0 && stand.learned() > 0)
                .toList();
        if (known.size() < FEWEST) {
            return new Trend(known.size(), 0, Double.POSITIVE_INFINITY);
        }
        List<Stand> later = known.subList(known.size() / 2, known.size());
        double weights = later.stream().mapToDouble(Stand::weight).sum();
        double center = later.stream().mapToDouble(s -> s.weight() * s.at()).sum() / weights;
        double spread = later.stream()
                .mapToDouble(s -> s.weight() * Math.pow(s.at() - center, 2))
                .sum();
        double slope = later.stream()
                        .mapToDouble(s -> s.weight() * (s.at() - center) * s.points())
                        .sum()
                / spread;
        return new Trend(later.size(), slope, 1 / Math.sqrt(spread));
    }

    /**
     * Whether there are enough evaluations to say anything.
     *
     * @return false if there are too few
     */
    public boolean known() {
        return Double.isFinite(error);
    }

    /**
     * Whether strength still rises, by a one-sided test at 5 in a hundred.
     *
     * @return true if the slope is more than chance gives
     */
    public boolean rising() {
        return slope > RISING * error;
    }

    /**
     * In a sentence.
     *
     * @param what of which there are twice as many, such as {@code games}
     * @return what the test says
     */
    public String sentence(String what) {
        if (!known()) {
            return "Whether it still rises is told from " + FEWEST + " evaluations on.";
        }
        return String.format(
                Locale.ROOT,
                "Over the last %d evaluations it gains %+.3f ± %.3f points with each doubling of the %s: by a one-sided"
                        + " test at 5 %%, %s.",
                evaluations,
                slope,
                error,
                what,
                rising() ? "it still rises" : "no more than chance gives, so the curve is flat as far as can be told");
    }
}
