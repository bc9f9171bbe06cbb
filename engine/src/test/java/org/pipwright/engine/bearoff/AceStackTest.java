package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.measures.EffectivePips;

/** Checkers stacked on the ace point: every roll bears off two, a double four, so all can be counted by hand. */
class AceStackTest {
    private final OneSidedTable table = Tables.oneSided(6, 15);

    private RollSpread stack(int checkers) {
        return table.rolls(table.index().of(CheckRows.side(Integer.toString(checkers)), 0));
    }

    /** Effective pips, computed for this project by other programs. */
    @ParameterizedTest
    @CsvSource({"3,14.9722", "4,14.9722", "5,22.0046", "10,36.0001", "15,57.0000"})
    void effectivePips(int checkers, double pips) {
        EffectivePips effective = new EffectivePips(checkers, stack(checkers).mean());
        assertEquals(pips, effective.count(), 6e-5);
        assertEquals(pips - checkers, effective.wastage(), 6e-5);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 10, 15})
    void distributionsByCounting(int checkers) {
        double[] left = new double[16];
        left[checkers] = 1;
        for (int roll = 1; roll <= 8; roll++) {
            double[] next = new double[16];
            for (int n = 1; n <= 15; n++) {
                next[Math.max(0, n - 2)] += left[n] * 5 / 6;
                next[Math.max(0, n - 4)] += left[n] / 6;
            }
            assertEquals(next[0], stack(checkers).exactly(roll), 1e-6);
            left = next;
            left[0] = 0;
        }
    }

    /**
     * Fifteen against fifteen: the chance that the last throw of the game is a double is 0.3417 (printed solution of a
     * research laboratory's monthly puzzle, July 2009). From the table: a throw that ends the game is a double, or would
     * have ended it without one.
     */
    @Test
    void lastThrowIsADouble() {
        double doubles = 0;
        for (int roll = 1; roll <= 8; roll++) {
            double first = lastIsDouble(roll) * stack(15).moreThan(roll - 1);
            double second = lastIsDouble(roll) * stack(15).moreThan(roll);
            doubles += first + second;
        }
        assertEquals(0.3417, doubles, 5e-5);
    }

    /**
     * Chance that a stack of 15 ends with its given roll and a double. Without the double only 1 or 2 checkers may be
     * left before it: those end by this roll whatever it is. So P(ends now) = P(1 or 2 left) + P(3 or 4 left) / 6, and
     * P(1 to 4 left) is the chance that a double would end it.
     */
    private double lastIsDouble(int roll) {
        double[] left = new double[16];
        left[15] = 1;
        for (int n = 1; n < roll; n++) {
            double[] next = new double[16];
            for (int c = 1; c <= 15; c++) {
                next[Math.max(0, c - 2)] += left[c] * 5 / 6;
                next[Math.max(0, c - 4)] += left[c] / 6;
            }
            left = next;
            left[0] = 0;
        }
        double upTo2 = left[1] + left[2];
        double upTo4 = left[3] + left[4];
        assertEquals(upTo2 + upTo4 / 6, stack(15).exactly(roll), 1e-6);
        return (upTo2 + upTo4) / 6;
    }

    /** The same chance for one side alone is (2 + 5 (-1/6)^k) / 7 with 2k or 2k - 1 checkers (the same solution). */
    @ParameterizedTest
    @ValueSource(ints = {15})
    void lastThrowOfOneSide(int checkers) {
        int k = (checkers + 1) / 2;
        double sum = 0;
        for (int roll = 1; roll <= 8; roll++) {
            sum += lastIsDouble(roll);
        }
        assertEquals((2 + 5 * Math.pow(-1 / 6.0, k)) / 7, sum, 1e-9);
    }
}
