package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.position.Planes;

/** The two-sided table of two checkers redone with the naive generator, in whole numbers: equities times 36^40. */
class TwoSidedFractionsTest {
    private static final BigInteger ONE = BigInteger.valueOf(36).pow(40);
    private static final BigInteger TWO = BigInteger.TWO;

    private final TwoSidedTable table = Tables.twoSided();

    private final Map<NaiveBoard, BigInteger> cubeless = new HashMap<>();
    private final Map<NaiveBoard, BigInteger> centred = new HashMap<>();
    private final Map<NaiveBoard, BigInteger> mine = new HashMap<>();
    private final Map<NaiveBoard, BigInteger> theirs = new HashMap<>();

    @Test
    void allPairsOfTwoCheckers() {
        int size = new SideIndex(6, 2).size();
        int[] planes = new int[Planes.STRIDE];
        for (int onRoll = 1; onRoll < size; onRoll++) {
            for (int opponent = 1; opponent < size; opponent++) {
                table.index().write(onRoll, planes, 0);
                table.index().write(opponent, planes, Planes.SIDE);
                NaiveBoard board = NaiveBoard.ofPlanes(planes, 0);
                TwoSidedValue value = table.value(onRoll, opponent);
                assertEquals(plain(cubeless(board)), 2 * value.win() - 1, 1e-8);
                assertEquals(plain(centred(board)), value.centred(), 1e-8);
                assertEquals(plain(mine(board)), value.mine(), 1e-8);
                assertEquals(plain(theirs(board)), value.theirs(), 1e-8);
            }
        }
    }

    private static double plain(BigInteger scaled) {
        return new BigDecimal(scaled)
                .divide(new BigDecimal(ONE), MathContext.DECIMAL64)
                .doubleValue();
    }

    private BigInteger cubeless(NaiveBoard board) {
        return known(cubeless, board, b -> roll(b, this::cubeless));
    }

    private BigInteger centred(NaiveBoard board) {
        return known(centred, board, b -> roll(b, this::centred).max(doubled(b)));
    }

    /** The side on roll owns the cube: after it has rolled, the opponent's cube is the other side's. */
    private BigInteger mine(NaiveBoard board) {
        return known(mine, board, b -> roll(b, this::theirs).max(doubled(b)));
    }

    private BigInteger theirs(NaiveBoard board) {
        return known(theirs, board, b -> roll(b, this::mine));
    }

    private BigInteger doubled(NaiveBoard board) {
        return TWO.multiply(theirs(board)).min(ONE);
    }

    private static BigInteger known(
            Map<NaiveBoard, BigInteger> values, NaiveBoard board, Function<NaiveBoard, BigInteger> maker) {
        BigInteger value = values.get(board);
        if (value == null) {
            value = maker.apply(board);
            values.put(board, value);
        }
        return value;
    }

    /** Mean over 36 throws of the best result's value, the opponent's being its negative. */
    private static BigInteger roll(NaiveBoard board, Function<NaiveBoard, BigInteger> opponents) {
        BigInteger sum = BigInteger.ZERO;
        for (int throwOf36 = 0; throwOf36 < 36; throwOf36++) {
            sum = sum.add(NaivePlayGenerator.generate(board, throwOf36 / 6 + 1, throwOf36 % 6 + 1).results().stream()
                    .map(result -> onBoard(result) == 0
                            ? ONE
                            : opponents.apply(result.swapped()).negate())
                    .reduce(BigInteger::max)
                    .orElseThrow());
        }
        BigInteger[] parts = sum.divideAndRemainder(BigInteger.valueOf(36));
        assertEquals(BigInteger.ZERO, parts[1]);
        return parts[0];
    }

    private static int onBoard(NaiveBoard board) {
        return NaiveRules.checkers(board) - board.mine(NaiveBoard.OFF);
    }
}
