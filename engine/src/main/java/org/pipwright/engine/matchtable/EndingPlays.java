package org.pipwright.engine.matchtable;

import java.util.Arrays;
import java.util.BitSet;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * The arrangements that rolls can make of a side's last checkers, found when they are first asked for. Shared by threads.
 *
 * <p>A result is left out only if another one of the roll is proved to be at least as good whatever the other side does, see
 * {@link EndingOrder}. Fewer pips do not prove it: a gap closed can be worth more, since dice must be played. With 6-2-1-1 a
 * side wins more often than with 6-1-1-1.
 */
final class EndingPlays {
    private final SideIndex index;
    private final int[] pips;
    private final AtomicReferenceArray<EndingRolls> results;
    private final EndingOrder order;
    private final PlayGenerator generator = new PlayGenerator();

    EndingPlays(SideIndex index) {
        this.index = index;
        pips = new int[index.size()];
        results = new AtomicReferenceArray<>(pips.length);
        order = new EndingOrder(this);
        int[] planes = new int[Planes.SIDE];
        for (int i = 0; i < pips.length; i++) {
            index.write(i, planes, 0);
            pips[i] = Planes.pips(planes, 0);
        }
    }

    SideIndex index() {
        return index;
    }

    int pips(int arrangement) {
        return pips[arrangement];
    }

    /** What rolls can make of an arrangement other than 0. */
    EndingRolls of(int arrangement) {
        EndingRolls known = results.get(arrangement);
        if (known == null) {
            known = find(arrangement);
            results.set(arrangement, known);
        }
        return known;
    }

    /** Comes back here for what the results can become; the generator's are copied before. */
    private synchronized EndingRolls find(int arrangement) {
        int[] planes = new int[Planes.STRIDE];
        index.write(arrangement, planes, 0);
        int[][] found = new int[Roll.COUNT][];
        double mean = 1;
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int[] all = new int[count];
            for (int i = 0; i < count; i++) {
                all[i] = index.of(generator.results(), i * Planes.STRIDE);
            }
            found[roll.index()] = best(all);
            mean += roll.probability() * leastMean(found[roll.index()]);
        }
        return new EndingRolls(found, mean);
    }

    private double leastMean(int[] results) {
        double least = Double.POSITIVE_INFINITY;
        for (int result : results) {
            least = Math.min(least, result == 0 ? 0 : of(result).mean());
        }
        return least;
    }

    /** Leaves out what another result beats or equals. */
    private int[] best(int[] all) {
        int count = 0;
        for (int result : all) {
            int kept = 0;
            boolean beaten = false;
            for (int i = 0; i < count && !beaten; i++) {
                beaten = order.atLeast(all[i], result);
            }
            for (int i = 0; i < count && !beaten; i++) {
                if (!order.atLeast(result, all[i])) {
                    all[kept++] = all[i];
                }
            }
            if (!beaten) {
                all[kept] = result;
                count = kept + 1;
            }
        }
        return Arrays.copyOf(all, count);
    }

    /** What any roll can make of any of some arrangements; a side that is off is left out. */
    BitSet after(BitSet arrangements) {
        BitSet all = new BitSet(pips.length);
        for (int a = arrangements.nextSetBit(0); a >= 0; a = arrangements.nextSetBit(a + 1)) {
            all.or(of(a).after());
        }
        return all;
    }

    /** Some arrangements, those with fewer pips first. */
    int[] inOrder(BitSet arrangements) {
        return arrangements.stream()
                .boxed()
                .sorted((a, b) -> Integer.compare(pips[a], pips[b]))
                .mapToInt(Integer::intValue)
                .toArray();
    }
}
