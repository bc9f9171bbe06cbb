package org.pipwright.engine.features;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.RandomBoards;

/** The measures agree with their definitions, and take every value they can. */
@Tag("fast")
class MeasuresTest {
    private static final int BOARDS = 20_000;

    @Test
    void hittingRollsAgree() {
        BitSet seen = new BitSet();
        RandomBoards.of(71, BOARDS / 4).forEach(board -> {
            int rolls = Measures.hittingRolls(board.toPlanes(), 0, Planes.SIDE);
            assertEquals(NaiveMeasures.hittingRolls(board), rolls, board::toString);
            int ofOther = Measures.hittingRolls(board.toPlanes(), Planes.SIDE, 0);
            assertEquals(NaiveMeasures.hittingRolls(board.swapped()), ofOther, board::toString);
            seen.set(rolls);
        });
        assertTrue(seen.cardinality() >= 30, "few different counts of hitting rolls: " + seen);
    }

    @Test
    void dancingRollsAgree() {
        BitSet seen = new BitSet();
        RandomBoards.of(72, BOARDS).forEach(board -> {
            int rolls = Measures.dancingRolls(board.toPlanes(), 0);
            assertEquals(NaiveMeasures.dancingRolls(board), rolls, board::toString);
            seen.set(rolls);
        });
        assertEquals(7, seen.cardinality(), "0 to 6 home points held");
    }

    @Test
    void longestPrimesAgree() {
        BitSet seen = new BitSet();
        RandomBoards.of(73, BOARDS).forEach(board -> {
            int length = Measures.longestPrime(board.toPlanes(), 0);
            assertEquals(NaiveMeasures.longestPrime(board), length, board::toString);
            seen.set(length);
        });
        assertEquals(8, seen.cardinality(), "primes of 0 to 7");
    }

    @Test
    void freedomAgrees() {
        RandomBoards.of(74, BOARDS).forEach(board -> {
            float freedom = Measures.freedom(board.toPlanes(), 0, Planes.SIDE);
            assertEquals(NaiveMeasures.freedom(board), freedom, 1e-6, board::toString);
        });
    }

    /**
     * Shots known by counting: a direct shot n pips away hits with 11 rolls plus the combinations (common practice, no
     * source: 11, 12, 14, 15, 15, 17 for 1 to 6 pips when nothing is in the way).
     */
    @ParameterizedTest
    @CsvSource({
        "1@24 / 1@2 of 1, 11",
        "1@24 / 1@3 of 1, 12",
        "1@24 / 1@4 of 1, 14",
        "1@24 / 1@5 of 1, 15",
        "1@24 / 1@6 of 1, 15",
        "1@24 / 1@7 of 1, 17",
        "1@24 / 1@8 of 1, 6",
        "1@24 / 1@13 of 1, 3",
        "1@24 / 1@24 of 1, 0",
        "1@bar / 1@6 of 1, 17",
        "2@6 / 2@20 of 2, 0"
    })
    void knownShots(String text, int rolls) {
        int[] planes = PositionText.parse(text).toPlanes();
        assertEquals(rolls, Measures.hittingRolls(planes, 0, Planes.SIDE));
    }

    @Test
    void nothingIsLeftToFreeOnceAllAreOff() {
        int[] off = new int[Planes.STRIDE];
        off[0] = 1;
        off[Planes.SIDE] = 1 << 3;
        assertEquals(1, Measures.freedom(off, 0, Planes.SIDE));
        assertEquals(1, NaiveMeasures.freedom(NaiveBoard.ofPlanes(off, 0)));
    }
}
