package org.pipwright.engine.features;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.regime.RandomBoards;

/** Pairs against a search through all places of both sides. */
@Tag("fast")
class FacingPairsTest {
    /** All pairs there can be, in order; a pair's number is its place in the list. */
    private static final List<String> NUMBERED = numbered();

    private static List<String> numbered() {
        List<String> pairs = new ArrayList<>();
        for (int p = 1; p <= NaiveBoard.BAR; p++) {
            for (int q = 1; q <= NaiveBoard.BAR; q++) {
                // The opponent's place q is the point 25 - q, and its bar behind point 0: yet to pass if it is lower.
                if (p > 25 - q) {
                    pairs.addAll(List.of(
                            p + " one " + q + " one",
                            p + " one " + q + " more",
                            p + " more " + q + " one",
                            p + " more " + q + " more"));
                }
            }
        }
        return pairs;
    }

    private static int[] naive(NaiveBoard board, IntPredicate mine, IntPredicate theirs) {
        NaiveBoard other = board.swapped();
        List<Integer> found = new ArrayList<>();
        for (int p = 1; p <= NaiveBoard.BAR; p++) {
            for (int q = 26 - p; q <= NaiveBoard.BAR; q++) {
                if (board.mine(p) > 0 && other.mine(q) > 0 && (mine.test(p) || theirs.test(q))) {
                    found.add(NUMBERED.indexOf(
                            p + kind(board.mine(p)) + q + kind(other.mine(q)).stripTrailing()));
                }
            }
        }
        return found.stream().mapToInt(Integer::intValue).toArray();
    }

    private static String kind(int count) {
        return count == 1 ? " one " : " more ";
    }

    private static int[] listed(NaiveBoard board, int mine, int theirs) {
        int[] out = new int[FacingPairs.MAX + 1];
        int[] planes = new int[24];
        System.arraycopy(board.toPlanes(), 0, planes, 8, 8);
        int size = FacingPairs.list(planes, 8, mine, theirs, out, 1);
        return IntStream.of(Arrays.copyOfRange(out, 1, 1 + size)).sorted().toArray();
    }

    @Test
    void count() {
        assertEquals(NUMBERED.size(), FacingPairs.COUNT);
    }

    @Test
    void listAgreesWithTheSearch() {
        Set<Integer> seen = new HashSet<>();
        RandomBoards.of(85, 4_000).forEach(board -> {
            int[] out = new int[FacingPairs.MAX];
            int size = FacingPairs.list(board.toPlanes(), 0, out, 0);
            int[] found = Arrays.copyOf(out, size);
            assertArrayEquals(naive(board, p -> true, q -> true), found, board::toString);
            seen.addAll(IntStream.of(found).boxed().collect(Collectors.toList()));
        });
        // Bar against bar with many on both is rare; nearly all come up.
        assertFalse(seen.size() < 0.98 * FacingPairs.COUNT, seen.size() + " different pairs");
    }

    @Test
    void someAgreesWithTheSearch() {
        SplittableRandom random = new SplittableRandom(86);
        RandomBoards.of(87, 1_000).forEach(board -> {
            int mine = random.nextInt() & random.nextInt();
            int theirs = random.nextInt() & random.nextInt();
            assertArrayEquals(
                    naive(board, p -> (mine >>> p & 1) != 0, q -> (theirs >>> q & 1) != 0),
                    listed(board, mine, theirs),
                    board::toString);
        });
    }

    /** What is kept when a board becomes another, less what went and with what came, is the other board's list. */
    @Test
    void changesLeadFromOneBoardToAnother() {
        List<NaiveBoard> boards = RandomBoards.of(88, 400).collect(Collectors.toList());
        for (int i = 1; i < boards.size(); i++) {
            int[] from = boards.get(i - 1).toPlanes();
            int[] to = boards.get(i).toPlanes();
            int mine = FacingPairs.changed(to, 0, from, 0);
            int theirs = FacingPairs.changed(to, Planes.SIDE, from, Planes.SIDE);
            Set<Integer> pairs = asSet(listed(boards.get(i - 1), -1, -1));
            pairs.removeAll(asSet(listed(boards.get(i - 1), mine, theirs)));
            pairs.addAll(asSet(listed(boards.get(i), mine, theirs)));
            assertEquals(asSet(listed(boards.get(i), -1, -1)), pairs);
        }
    }

    private static Set<Integer> asSet(int[] numbers) {
        return IntStream.of(numbers).boxed().collect(Collectors.toSet());
    }
}
