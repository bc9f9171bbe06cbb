package org.pipwright.cli.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Numbers as they are printed, the same in every locale. Formatters of the JDK would do, but they load the locale data,
 * which takes longer than ranking a roll.
 */
public final class Numbers {
    private static final double MILLION = 1e6;

    private static final int DECIMALS = 6;

    /** Sign, seven digits, point, decimals. */
    private static final int DIGITS = 1 + 7 + 1 + DECIMALS;

    private static final double[] POWERS_OF_TEN = {1, 1e1, 1e2, 1e3, 1e4};

    private static final double HALF = 0.5;

    /** So close to a half, a product may be rounded to its other side. */
    private static final double NEARLY = 1e-6;

    /** Below this, products are rounded by far less than that. */
    private static final double LARGE = 1e8;

    private Numbers() {}

    /**
     * Points per game with their sign. The grades' limits are thousandths; one digit more keeps a cost just below a limit
     * from looking as if it had reached it.
     *
     * @param points a number of points
     * @return with sign and four decimals
     */
    public static String points(double points) {
        String digits = fixed(Math.abs(points), 4);
        return (points < 0 && !nothing(digits) ? "-" : "+") + digits;
    }

    /**
     * What a choice loses, likewise; without a sign for the best.
     *
     * @param cost in points, 0 or negative
     * @return with sign and four decimals
     */
    public static String cost(double cost) {
        return signed(cost, size(Math.abs(cost)));
    }

    /**
     * What a choice loses in chances, in per cent to a hundredth; without a sign for the best.
     *
     * @param cost a difference of chances, 0 or negative
     * @return per cent with sign and two decimals
     */
    public static String percentCost(double cost) {
        return signed(cost, finePercent(Math.abs(cost)));
    }

    /** Digits with the sign of a number, unless all of them are 0. */
    private static String signed(double number, String digits) {
        return nothing(digits) ? digits : (number < 0 ? "-" : "+") + digits;
    }

    private static boolean nothing(String digits) {
        return zero(digits.toCharArray(), 0, digits.length());
    }

    /**
     * A chance in per cent, to a hundredth: chances to win a match differ by less than those to win a game.
     *
     * @param chance in [0, 1]
     * @return per cent with two decimals
     */
    public static String finePercent(double chance) {
        return fixed(100 * chance, 2);
    }

    /**
     * Points per game without a sign, such as a standard error.
     *
     * @param points at least 0
     * @return with four decimals
     */
    public static String size(double points) {
        return fixed(points, 4);
    }

    /** Points to a thousandth without a sign, for sentences. */
    static String thousandths(double points) {
        return fixed(points, 3);
    }

    /** A number that is no chance and no points, to a hundredth. */
    static String hundredths(double number) {
        return fixed(number, 2);
    }

    /** A number that is no chance and no points, to a tenth. */
    static String tenths(double number) {
        return fixed(number, 1);
    }

    /**
     * A chance in per cent, to a tenth.
     *
     * @param chance in [0, 1]
     * @return per cent with one decimal
     */
    public static String percent(double chance) {
        return fixed(100 * chance, 1);
    }

    /**
     * The number rounded, halves away from zero. Only close to a half does that need its exact decimal form, which for all
     * numbers of a table takes a hundredth of a second in a JVM that has just started.
     */
    private static String fixed(double number, int decimals) {
        double scaled = Math.abs(number) * POWERS_OF_TEN[decimals];
        double below = Math.floor(scaled);
        double over = scaled - below;
        if (!(scaled < LARGE) || Math.abs(over - HALF) < NEARLY) {
            return exactly(number, decimals);
        }
        long units = (long) below + (over > HALF ? 1 : 0);
        String digits = Long.toString(units);
        digits = "0".repeat(Math.max(0, decimals + 1 - digits.length())) + digits;
        int point = digits.length() - decimals;
        return (number < 0 && units > 0 ? "-" : "") + digits.substring(0, point) + "." + digits.substring(point);
    }

    /** The same by way of the exact decimal form. */
    static String exactly(double number, int decimals) {
        return new BigDecimal(number).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    }

    /** A text with spaces before it, to be a given number of characters wide. */
    static String right(Object text, int width) {
        return " ".repeat(Math.max(0, width - text.toString().length())) + text;
    }

    /** The decimal form of a number below 9 million in size, to a millionth and without zeros at its end. */
    static String millionths(double number) {
        long units = Math.round(Math.abs(number) * MILLION);
        char[] digits = new char[DIGITS];
        int at = DIGITS;
        int end = DIGITS;
        for (int i = 0; i < DECIMALS; i++, units /= 10) {
            digits[--at] = (char) ('0' + units % 10);
            // JSON numbers end with a digit behind the point, and it may be the only one that is 0.
            end = end == at + 1 && digits[at] == '0' && i < DECIMALS - 1 ? at : end;
        }
        digits[--at] = '.';
        do {
            digits[--at] = (char) ('0' + units % 10);
            units /= 10;
        } while (units > 0);
        if (number < 0 && !zero(digits, at, end)) {
            digits[--at] = '-';
        }
        return new String(digits, at, end - at);
    }

    private static boolean zero(char[] digits, int from, int to) {
        for (int i = from; i < to; i++) {
            if (digits[i] != '0' && digits[i] != '.') {
                return false;
            }
        }
        return true;
    }

    /** To a millionth, for programs: as far as float weights go. */
    static double rounded(double number) {
        return Math.round(number * MILLION) / MILLION;
    }
}
