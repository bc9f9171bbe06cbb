package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.naive.NaiveRules;

/** Small tables redone with the naive generator in whole numbers: means as fractions with denominators 36^n. */
class ExactFractionsTest {
    private static final BigInteger SCALE = BigInteger.valueOf(36).pow(80);

    private final Map<NaiveBoard, BigInteger> means = new HashMap<>();
    private final Map<NaiveBoard, BigInteger> firsts = new HashMap<>();

    @ParameterizedTest
    @CsvSource({"6,3", "9,2", "24,1"})
    void meansInWholeNumbers(int points, int checkers) {
        OneSidedTable table = Tables.oneSided(points, checkers);
        int[] planes = new int[8];
        for (int i = 1; i < table.index().size(); i++) {
            table.index().write(i, planes, 0);
            NaiveBoard board = NaiveBoard.ofPlanes(planes, 0);
            assertEquals(scaled(mean(board)), table.mean(i), 1.5e-7, board.toString());
            assertEquals(scaled(first(board)), table.meanToFirst(i), 1.5e-7, board.toString());
        }
    }

    private static double scaled(BigInteger value) {
        return new BigDecimal(value)
                .divide(new BigDecimal(SCALE), MathContext.DECIMAL64)
                .doubleValue();
    }

    /** Least mean rolls to bear off everything, times SCALE; exact while a game takes at most 80 rolls. */
    private BigInteger mean(NaiveBoard board) {
        if (NaiveRules.allOff(board)) {
            return BigInteger.ZERO;
        }
        BigInteger known = means.get(board);
        if (known != null) {
            return known;
        }
        BigInteger sum = BigInteger.ZERO;
        for (int throwOf36 = 0; throwOf36 < 36; throwOf36++) {
            sum = sum.add(NaivePlayGenerator.generate(board, throwOf36 / 6 + 1, throwOf36 % 6 + 1).results().stream()
                    .map(this::mean)
                    .reduce(BigInteger::min)
                    .orElseThrow());
        }
        BigInteger mean = SCALE.add(exactly36th(sum));
        means.put(board, mean);
        return mean;
    }

    /** Least mean rolls to bear off one checker, times SCALE. */
    private BigInteger first(NaiveBoard board) {
        BigInteger known = firsts.get(board);
        if (known != null) {
            return known;
        }
        BigInteger sum = BigInteger.ZERO;
        for (int throwOf36 = 0; throwOf36 < 36; throwOf36++) {
            sum = sum.add(NaivePlayGenerator.generate(board, throwOf36 / 6 + 1, throwOf36 % 6 + 1).results().stream()
                    .map(result -> result.mine(NaiveBoard.OFF) > 0 ? BigInteger.ZERO : first(result))
                    .reduce(BigInteger::min)
                    .orElseThrow());
        }
        BigInteger mean = SCALE.add(exactly36th(sum));
        firsts.put(board, mean);
        return mean;
    }

    private static BigInteger exactly36th(BigInteger sum) {
        BigInteger[] parts = sum.divideAndRemainder(BigInteger.valueOf(36));
        assertEquals(BigInteger.ZERO, parts[1]);
        return parts[0];
    }
}
