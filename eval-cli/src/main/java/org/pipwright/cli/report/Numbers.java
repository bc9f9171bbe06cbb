package org.pipwright.cli.report;

import java.util.Locale;

/** Numbers as they are printed, the same in every locale. */
final class Numbers {
    private static final double MILLION = 1e6;

    private Numbers() {}

    /** Points per game with its sign, to a thousandth. */
    static String points(double points) {
        return String.format(Locale.ROOT, "%+.3f", points);
    }

    /** What a play loses, to a thousandth: 0.000 for the best. */
    static String cost(double cost) {
        return cost == 0 ? "0.000" : points(cost);
    }

    /** A chance in per cent, to a tenth. */
    static String percent(double chance) {
        return String.format(Locale.ROOT, "%.1f", 100 * chance);
    }

    /** To a millionth, for programs: as far as float weights go. */
    static double rounded(double number) {
        return Math.round(number * MILLION) / MILLION;
    }
}
