package org.pipwright.engine.play;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.naive.NaivePlays;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.regime.RandomBoards;

/** What holds of every result of a roll, whatever the position. */
class PlayPropertiesTest {
    private static final int BOARDS = 50_000;

    private final PlayGenerator generator = new PlayGenerator();

    /** One property of a roll's results. */
    private interface Property {
        void check(NaiveBoard board, int larger, int smaller);
    }

    private void everywhere(long seed, Property property) {
        SplittableRandom dice = new SplittableRandom(seed);
        RandomBoards.of(seed, BOARDS).forEach(board -> {
            int die = dice.nextInt(1, 7);
            int other = dice.nextInt(1, 7);
            property.check(board, Math.max(die, other), Math.min(die, other));
        });
    }

    private NaiveBoard[] results(NaiveBoard board, int larger, int smaller) {
        NaiveBoard[] results = new NaiveBoard[generator.generate(board.toPlanes(), 0, larger, smaller)];
        assertEquals(results.length, generator.size());
        Arrays.setAll(results, i -> NaiveBoard.ofPlanes(generator.results(), i * Planes.STRIDE));
        return results;
    }

    @Test
    void noCheckerIsLostAndEveryResultIsAPosition() {
        everywhere(21, (board, larger, smaller) -> {
            int checkers = NaiveRules.checkers(board);
            for (NaiveBoard result : results(board, larger, smaller)) {
                assertEquals(checkers, NaiveRules.checkers(result), board::toString);
                assertEquals(checkers, NaiveRules.checkers(result.swapped()), board::toString);
                Position.ofPlanes(result.toPlanes(), 0);
            }
        });
    }

    /** The mover's pips fall by the dice played, or by less if a larger die bore a checker off. */
    @Test
    void pipsFallByTheDicePlayed() {
        int[] wasteful = new int[1];
        everywhere(22, (board, larger, smaller) -> {
            NaivePlays plays = NaivePlayGenerator.generate(board, larger, smaller);
            int played = pipsPlayed(plays, larger, smaller);
            for (NaiveBoard result : results(board, larger, smaller)) {
                int fell = NaiveRules.pips(board) - NaiveRules.pips(result);
                int off = result.mine(NaiveBoard.OFF) - board.mine(NaiveBoard.OFF);
                // A checker borne off by a die wastes at most that die less one pip.
                assertTrue(fell <= played && fell >= played - 5 * off, board::toString);
                assertTrue(off == 0 || result.allHome(), board::toString);
                wasteful[0] += fell < played ? 1 : 0;
            }
        });
        assertTrue(wasteful[0] > 1000, "results that waste pips");
    }

    private static int pipsPlayed(NaivePlays plays, int larger, int smaller) {
        if (larger == smaller) {
            return plays.steps() * larger;
        }
        if (plays.steps() == 2) {
            return larger + smaller;
        }
        return plays.steps() == 0 ? 0 : plays.larger() ? larger : smaller;
    }

    /** The opponent loses only blots, each sent from its point to the bar; nothing else of the opponent's moves. */
    @Test
    void opponentsPipsRiseByWhatIsHit() {
        int[] hits = new int[1];
        everywhere(23, (board, larger, smaller) -> {
            int before = NaiveRules.pips(board.swapped());
            for (NaiveBoard result : results(board, larger, smaller)) {
                int rise = 0;
                int hit = 0;
                for (int place = 1; place <= 24; place++) {
                    if (result.theirs(place) != board.theirs(place)) {
                        assertEquals(1, board.theirs(place), board::toString);
                        assertEquals(0, result.theirs(place), board::toString);
                        rise += 25 - place;
                        hit++;
                    }
                }
                assertEquals(before + rise, NaiveRules.pips(result.swapped()), board::toString);
                assertEquals(board.theirs(NaiveBoard.BAR) + hit, result.theirs(NaiveBoard.BAR), board::toString);
                hits[0] += hit;
            }
        });
        assertTrue(hits[0] > 1000, "hits");
    }

    /** When dice are left over, none of the results lets one more be played. */
    @Test
    void playsAreMaximal() {
        int[] leftOver = new int[1];
        everywhere(24, (board, larger, smaller) -> {
            NaivePlays plays = NaivePlayGenerator.generate(board, larger, smaller);
            boolean allPlayed = plays.steps() == (larger == smaller ? 4 : 2);
            if (allPlayed) {
                return;
            }
            int left = plays.steps() == 1 && plays.larger() ? smaller : larger;
            for (NaiveBoard result : results(board, larger, smaller)) {
                for (int from = 1; from <= NaiveBoard.BAR; from++) {
                    assertEquals(null, result.step(from, left), board::toString);
                }
                leftOver[0]++;
            }
        });
        assertTrue(leftOver[0] > 1000, "results with dice left over");
    }

    /** No checker of the mover goes back: the number behind any point never grows. */
    @Test
    void checkersMoveForwardOnly() {
        everywhere(25, (board, larger, smaller) -> {
            for (NaiveBoard result : results(board, larger, smaller)) {
                int before = 0;
                int after = 0;
                for (int place = NaiveBoard.BAR; place >= 1; place--) {
                    before += board.mine(place);
                    after += result.mine(place);
                    assertTrue(after <= before, board::toString);
                }
            }
        });
    }

    /** Where the position lies in its array, and what was generated before, make no difference. */
    @Test
    void answerDependsOnThePositionAlone() {
        PlayGenerator used = new PlayGenerator();
        everywhere(26, (board, larger, smaller) -> {
            int[] shifted = new int[5 + Planes.STRIDE];
            System.arraycopy(board.toPlanes(), 0, shifted, 5, Planes.STRIDE);
            int[] before = shifted.clone();
            int size = used.generate(shifted, 5, larger, smaller);
            assertArrayEquals(before, shifted);

            PlayGenerator fresh = new PlayGenerator();
            assertEquals(fresh.generate(board.toPlanes(), 0, larger, smaller), size);
            int ints = size * Planes.STRIDE;
            assertArrayEquals(Arrays.copyOf(fresh.results(), ints), Arrays.copyOf(used.results(), ints));
        });
    }
}
