package org.pipwright.engine.position;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.regime.RandomBoards;

/** Position against plain counts, and what it refuses. */
@Tag("fast")
class PositionTest {
    private static final int BOARDS = 20_000;

    @Test
    void agreesWithPlainCounts() {
        RandomBoards.of(11, BOARDS).forEach(board -> {
            Position position = Position.of(mine(board), mine(board.swapped()));
            NaiveBoard other = board.swapped();
            for (int place = 0; place < Planes.PLACES; place++) {
                assertEquals(board.mine(place), position.count(place));
                assertEquals(board.theirs(place), position.opponentCount(place));
            }
            assertEquals(NaiveRules.checkers(board), position.checkers());
            assertEquals(NaiveRules.pips(board), position.pips());
            assertEquals(NaiveRules.pips(other), position.opponentPips());
            assertEquals(board.mine(NaiveBoard.OFF), position.borneOff());
            assertEquals(other.mine(NaiveBoard.OFF), position.opponentBorneOff());
            assertEquals(NaiveRules.contact(board), position.contact());
            assertFalse(position.finished());
            assertEquals(position, Position.ofPlanes(board.toPlanes(), 0));
        });
    }

    @Test
    void swappedTwiceIsTheIdentity() {
        RandomBoards.of(12, BOARDS).forEach(board -> {
            Position position = Position.ofPlanes(board.toPlanes(), 0);
            Position swapped = position.swapped();
            assertEquals(position, swapped.swapped());
            assertEquals(position.hashCode(), swapped.swapped().hashCode());
            assertEquals(position.pips(), swapped.opponentPips());
            assertEquals(position.contact(), swapped.contact());
            assertEquals(board.equals(board.swapped()), position.equals(swapped));
        });
    }

    @Test
    void planesHandedOutAreCopies() {
        Position position = Position.start();
        int[] planes = position.toPlanes();
        Arrays.fill(planes, 0);
        assertNotEquals(0, position.pips());
        int[] source = position.toPlanes();
        Position copy = Position.ofPlanes(source, 0);
        Arrays.fill(source, 0);
        assertEquals(position, copy);
        int[] target = new int[Planes.STRIDE + 2];
        position.copyTo(target, 2);
        assertArrayEquals(position.toPlanes(), Arrays.copyOfRange(target, 2, target.length));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15})
    void startsAreConsistentSymmetricAndInContact(int checkers) {
        Position start = Position.start(checkers);
        assertDoesNotThrow(start::checkConsistency);
        assertEquals(checkers, start.checkers());
        assertEquals(start, start.swapped());
        assertTrue(start.contact());
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 13, 14, 16})
    void refusesStartsThatCannotBe(int checkers) {
        assertThrows(InvalidPositionException.class, () -> Position.start(checkers));
    }

    /** Each row breaks one rule; the message has to name it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1:6 2:8 | 1:6 1:8 | same number",
                "9:6 7:8 | 9:6 7:8 | use 1 to 15",
                "0:1 | 0:1 | use 1 to 15",
                "2:6 | 2:19 | one point",
                "16:6 | 16:6 | use 0 to 15",
                "-1:6 | 1:8 | use 0 to 15",
                "3:0 | 3:0 | both sides have borne off"
            })
    void refusesPositionsThatCannotBe(String mine, String theirs, String reason) {
        InvalidPositionException refusal =
                assertThrows(InvalidPositionException.class, () -> Position.of(counts(mine), counts(theirs)));
        assertTrue(refusal.getMessage().contains(reason), refusal.getMessage());
        assertFalse(refusal.getMessage().contains("\n"));
    }

    @Test
    void refusesTooFewPlaces() {
        assertThrows(InvalidPositionException.class, () -> Position.of(new int[24], new int[26]));
    }

    @Test
    void finishedWhenOneSideIsOff() {
        Position won = Position.of(counts("2:0"), counts("1:5 1:25"));
        assertTrue(won.finished());
        assertTrue(won.swapped().finished());
        assertFalse(Position.of(counts("1:0 1:1"), counts("2:5")).finished());
    }

    private static int[] mine(NaiveBoard board) {
        int[] counts = new int[Planes.PLACES];
        Arrays.setAll(counts, board::mine);
        return counts;
    }

    /** Counts from words such as 2:24, two checkers on the 24 point. */
    private static int[] counts(String words) {
        int[] counts = new int[Planes.PLACES];
        for (String word : words.split(" ")) {
            String[] parts = word.split(":");
            counts[Integer.parseInt(parts[1])] = Integer.parseInt(parts[0]);
        }
        return counts;
    }
}
