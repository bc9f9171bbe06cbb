package org.pipwright.engine.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.RandomBoards;

/** An outcome that is ruled out never happens, and what the rules exclude at once is ruled out. */
class PossibleOutcomesTest {
    private static final int GAMES = 20_000;

    /** Bits as letters: w g b for winning a single game, gammon, backgammon; W G B for losing one. */
    private static final String LETTERS = "wgbWGB";

    @ParameterizedTest
    @CsvSource({
        "start, wgbWGB",
        "14@6 / 5@6 3@8 5@13 2@24, wgbW",
        "5@6 3@8 5@13 2@24 / 14@6, wWGB",
        "14@1 / 14@1, wW",
        "15@6 / 15@6, wgWG",
        "15@5 / 13@1 2@19, wgbWG",
        "13@1 2@19 / 15@5, wgWGB",
        "15@6 / 13@1 2@18, wgWG",
        "15@7 / 15@19, wgbWGB",
        "15@7 / 15@17, wgWG",
        "15@4 / 13@2 1@18 1@20, wgbWG",
        "15@4 / 13@2 1@18 1@bar, wgbWGB",
        "14@4 / 13@2 1@18 1@20, wgbW",
        "1@1 / 1@1 of 1, wgWG",
        "1@1 / 1@23 of 1, wgbWG",
        "1@2 / 1@24 of 1, wgbWGB"
    })
    void directedCases(String text, String expected) {
        int[] planes = PositionText.parse(text).toPlanes();
        assertEquals(expected, letters(PossibleOutcomes.of(planes, 0)));
    }

    @Test
    void outcomesOfTheSwappedPositionAreSwapped() {
        RandomBoards.of(41, GAMES).forEach(board -> {
            int mask = PossibleOutcomes.of(board.toPlanes(), 0);
            assertEquals(
                    mask >> 3 | (mask & 7) << 3,
                    PossibleOutcomes.of(board.swapped().toPlanes(), 0));
        });
    }

    /** Random plays to the end from random boards: what happens was possible at every step, and nothing comes back. */
    @Test
    void whatHappensWasNeverRuledOut() {
        SplittableRandom random = new SplittableRandom(42);
        int[] happened = new int[LETTERS.length()];
        int[] ruledOut = new int[LETTERS.length()];
        RandomBoards.of(42, GAMES).forEach(start -> playOut(start, random, happened, ruledOut));
        for (int outcome = 0; outcome < LETTERS.length(); outcome++) {
            assertTrue(happened[outcome] > 100, "too few games end in " + LETTERS.charAt(outcome));
            boolean single = outcome % 3 == 0;
            assertTrue(single ? ruledOut[outcome] == 0 : ruledOut[outcome] > 1000, "ruled out: " + ruledOut[outcome]);
        }
    }

    private static void playOut(NaiveBoard start, SplittableRandom random, int[] happened, int[] ruledOut) {
        PlayGenerator generator = new PlayGenerator();
        List<Integer> masks = new ArrayList<>();
        NaiveBoard board = start;
        while (!NaiveRules.finished(board)) {
            masks.add(PossibleOutcomes.of(board.toPlanes(), 0));
            int die = random.nextInt(1, 7);
            int other = random.nextInt(1, 7);
            int size = generator.generate(board.toPlanes(), 0, Math.max(die, other), Math.min(die, other));
            board = NaiveBoard.ofPlanes(generator.results(), random.nextInt(size) * Planes.STRIDE)
                    .swapped();
        }
        // The side that would be next has lost, as only the side that has just played can have borne off its last.
        int outcome = 2 + NaiveRules.pointsLost(board);
        int later = 0;
        for (int ply = masks.size() - 1; ply >= 0; ply--) {
            outcome = (outcome + 3) % 6;
            int mask = masks.get(ply);
            String where = start + " ply " + ply;
            assertTrue((mask >> outcome & 1) != 0, where);
            later = later >> 3 | (later & 7) << 3;
            assertEquals(0, later & ~mask, where);
            later = mask;
            for (int i = 0; i < LETTERS.length(); i++) {
                ruledOut[i] += 1 - (mask >> i & 1);
            }
        }
        happened[outcome]++;
    }

    private static String letters(int mask) {
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < LETTERS.length(); i++) {
            if ((mask >> i & 1) != 0) {
                letters.append(LETTERS.charAt(i));
            }
        }
        return letters.toString();
    }
}
