package org.pipwright.engine.regime;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.pipwright.engine.naive.NaiveBoard;

/** Random unfinished boards from every source in turn, for tests of single properties. */
public final class RandomBoards {
    private RandomBoards() {}

    /** A stream of boards, the same for the same arguments; some sides are swapped so that either may be the odd one. */
    public static Stream<NaiveBoard> of(long seed, int boards) {
        SplittableRandom random = new SplittableRandom(seed);
        Source[] sources = Source.values();
        return IntStream.range(0, boards)
                .sequential()
                .mapToObj(i -> sources[i % sources.length].sample(random))
                .map(board -> random.nextBoolean() ? board : board.swapped());
    }
}
