package org.pipwright.engine.matchtable;

import java.util.BitSet;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * The arrangements that rolls can make of a side's last checkers, found when they are first asked for. Shared by threads.
 *
 * <p>All results count, those behind another one too: a gap closed can be worth more than pips, since dice must be played.
 * With 6-2-1-1 a side wins more often than with 6-1-1-1.
 */
final class EndingPlays {
    private final SideIndex index;
    private final int[] pips;
    private final AtomicReferenceArray<int[][]> results;

    EndingPlays(SideIndex index) {
        this.index = index;
        pips = new int[index.size()];
        results = new AtomicReferenceArray<>(pips.length);
        int[] planes = new int[Planes.SIDE];
        for (int i = 0; i < pips.length; i++) {
            index.write(i, planes, 0);
            pips[i] = Planes.pips(planes, 0);
        }
    }

    SideIndex index() {
        return index;
    }

    /** By the index of the roll, what it can make of an arrangement; 0 is no checker left. */
    int[][] of(int arrangement) {
        int[][] known = results.get(arrangement);
        if (known == null) {
            known = find(arrangement);
            results.set(arrangement, known);
        }
        return known;
    }

    private int[][] find(int arrangement) {
        PlayGenerator generator = new PlayGenerator();
        int[] planes = new int[Planes.STRIDE];
        index.write(arrangement, planes, 0);
        int[][] found = new int[Roll.COUNT][];
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            found[roll.index()] = new int[count];
            for (int i = 0; i < count; i++) {
                found[roll.index()][i] = index.of(generator.results(), i * Planes.STRIDE);
            }
        }
        return found;
    }

    /** What any roll can make of any of some arrangements; a side that is off is left out. */
    BitSet after(BitSet arrangements) {
        BitSet all = new BitSet(pips.length);
        for (int a = arrangements.nextSetBit(0); a >= 0; a = arrangements.nextSetBit(a + 1)) {
            for (int[] ofRoll : of(a)) {
                for (int result : ofRoll) {
                    all.set(result);
                }
            }
        }
        all.clear(0);
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
