package org.pipwright.bench.calibration;

import java.util.List;
import java.util.Locale;

/** Tables for people, in Markdown; everything in per cent. */
final class CalibrationText {
    private CalibrationText() {}

    static String of(Calibration calibration) {
        StringBuilder text = new StringBuilder(calibration.source()).append(".\n\n");
        calibration.agreement().ifPresent(agreement -> text.append("In the first games ")
                .append(agreement.words())
                .append(".\n\n"));
        text.append("Positions in which the rules have ruled a chance out are left out. Errors are standard errors by"
                + " games. A tenth is a tenth of the positions, in order of the prediction.\n\n");
        summary(calibration, text);
        for (Curve curve : calibration.curves()) {
            text.append("\n## ").append(curve.chance().words()).append("\n\n");
            table("by prediction", curve.bins(), text);
            text.append('\n');
            table("by tenths", curve.tenths(), text);
        }
        return text.toString();
    }

    private static void summary(Calibration calibration, StringBuilder text) {
        text.append("| chance | positions | predicted | observed | difference | worst tenth | tenths within 1.0"
                + " | mean distance |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        for (Curve curve : calibration.curves()) {
            Bin worst = curve.worstTenth();
            text.append(String.format(
                    Locale.ROOT,
                    "| %s | %,d | %.2f | %.2f | %s | %s at %.1f | %d of %d | %.2f |%n",
                    curve.chance().words(),
                    curve.all().count(),
                    100 * curve.all().predicted(),
                    100 * curve.all().observed(),
                    difference(curve.all()),
                    difference(worst),
                    100 * worst.predicted(),
                    within(curve.tenths()),
                    curve.tenths().size(),
                    100 * curve.meanDistance()));
        }
    }

    private static long within(List<Bin> bins) {
        return bins.stream()
                .filter(bin -> Math.abs(bin.difference()) <= Calibration.AIM)
                .count();
    }

    private static void table(String title, List<Bin> bins, StringBuilder text) {
        text.append("| ").append(title).append(" | positions | predicted | observed | difference |\n");
        text.append("| ---: | ---: | ---: | ---: | ---: |\n");
        for (Bin bin : bins) {
            String range = percent(bin.low()) + " to " + percent(bin.high());
            text.append(
                    bin.count() == 0
                            ? String.format("| %s | 0 | | | |%n", range)
                            : String.format(
                                    Locale.ROOT,
                                    "| %s | %,d | %.3f | %.3f | %s |%n",
                                    range,
                                    bin.count(),
                                    100 * bin.predicted(),
                                    100 * bin.observed(),
                                    difference(bin)));
        }
    }

    /** Up to three places, as few as say the same. */
    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.3f", 100 * share).replaceFirst("\\.?0+$", "");
    }

    private static String difference(Bin bin) {
        return String.format(Locale.ROOT, "%+.2f ± %.2f", 100 * bin.difference(), 100 * bin.error());
    }
}
