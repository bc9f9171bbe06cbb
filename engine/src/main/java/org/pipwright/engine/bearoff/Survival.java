package org.pipwright.engine.bearoff;

import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * Distributions of a number of rolls, as survival chances: entry k is the chance that more than k rolls are needed. The
 * mean number of rolls is the sum of the entries.
 *
 * <p>In tables an entry takes 24 bits, in units of 2^-24. The rounding error of each entry is carried into the next, so
 * that the sum of the stored entries, and with it the mean, is off by about one unit at most (6e-8), however many entries
 * there are. The record of a distribution is one byte for the number of leading entries that are 1, one byte for the
 * number of entries stored, and the entries, low byte first; all later ones are 0.
 */
final class Survival {
    /** The chance 1 in the units of the tables. */
    static final int UNIT = 1 << 24;

    /** The value of a unit. */
    static final double STEP = 1.0 / UNIT;

    /** Chances below this are left out while tables are built; the mean changes by far less than a unit. */
    static final double NEGLIGIBLE = 1e-17;

    private Survival() {}

    /** Appends the record of a distribution to a buffer. */
    static void encode(double[] survival, ByteBuffer out) {
        int[] units = quantise(survival);
        int first = leading(units);
        out.put((byte) first).put((byte) (units.length - first));
        for (int k = first; k < units.length; k++) {
            out.put((byte) units[k]).put((byte) (units[k] >> 8)).put((byte) (units[k] >> 16));
        }
    }

    /** Bytes that the record of a distribution takes. */
    static int recordSize(double[] survival) {
        int[] units = quantise(survival);
        return 2 + 3 * (units.length - leading(units));
    }

    private static int leading(int[] units) {
        int first = 0;
        while (first < units.length && units[first] == UNIT) {
            first++;
        }
        return first;
    }

    /** The entries that are not 0, in units. */
    private static int[] quantise(double[] survival) {
        int[] units = new int[survival.length];
        double carried = 0;
        int last = UNIT;
        for (int k = 0; k < survival.length; k++) {
            double exact = survival[k] * UNIT + carried;
            // A survival chance never rises, whatever was carried.
            last = (int) Math.min(last, Math.round(exact));
            if (last == 0) {
                return Arrays.copyOf(units, k);
            }
            units[k] = last;
            carried = exact - last;
        }
        return units;
    }

    /**
     * Reads a record.
     *
     * @return number of entries written to the array: the entries are survival chances 0, 1, ... until they are 0
     */
    static int decode(ByteBuffer in, int at, double[] survival) {
        int first = in.get(at) & 0xFF;
        int stored = in.get(at + 1) & 0xFF;
        for (int k = 0; k < first; k++) {
            survival[k] = 1;
        }
        // Reads four bytes for three: tables end with a byte of padding.
        for (int k = 0; k < stored; k++) {
            survival[first + k] = (in.getInt(at + 2 + 3 * k) & UNIT - 1) * STEP;
        }
        return first + stored;
    }

    /** The mean of a record, in rolls. */
    static double mean(ByteBuffer in, int at) {
        int stored = in.get(at + 1) & 0xFF;
        long units = 0;
        for (int k = 0; k < stored; k++) {
            units += in.getInt(at + 2 + 3 * k) & UNIT - 1;
        }
        return (in.get(at) & 0xFF) + units * STEP;
    }
}
