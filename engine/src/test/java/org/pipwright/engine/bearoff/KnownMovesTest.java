package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.position.Planes;

/** What is remembered of moves, against a map that forgets nothing. */
class KnownMovesTest {
    private static int[] side(SplittableRandom random) {
        return random.ints(Planes.SIDE, 0, 12).toArray();
    }

    private static List<Integer> key(int[] planes, int what) {
        return IntStream.concat(IntStream.of(planes).limit(Planes.SIDE), IntStream.of(what))
                .boxed()
                .collect(Collectors.toList());
    }

    @Test
    void whatIsFoundIsWhatWasKept() {
        KnownMoves moves = new KnownMoves();
        Map<List<Integer>, int[]> all = new HashMap<>();
        SplittableRandom random = new SplittableRandom(17);
        int found = 0;
        int forgotten = 0;
        for (int i = 0; i < 200_000; i++) {
            int[] planes = side(random);
            int[] before = planes.clone();
            int what = random.nextInt(1, 4);
            int[] expected = all.get(key(planes, what));
            if (moves.move(planes, what)) {
                assertArrayEquals(expected, planes);
                found++;
                continue;
            }
            assertArrayEquals(before, planes);
            forgotten += expected == null ? 0 : 1;
            int[] after = side(random);
            int[] results = {0, after[0], after[1], after[2], after[3]};
            moves.keep(planes, what, results, 1);
            all.put(key(planes, what), after);
            assertTrue(moves.move(planes, what));
            assertArrayEquals(after, planes);
        }
        assertTrue(found > 20_000, "found: " + found);
        assertTrue(forgotten > 1_000, "forgotten for others: " + forgotten);
    }

    @Test
    void nothingIsKnownAtFirst() {
        int[] planes = new int[Planes.STRIDE];
        assertEquals(false, new KnownMoves().move(planes, 1));
    }
}
