package org.pipwright.engine.bearoff;

import java.util.Arrays;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/** The arrangements that each of the 21 rolls can make of each arrangement, the opponent being out of the way. */
final class Successors {
    private final int[] starts;
    private int[] results = new int[1 << 16];

    Successors(SideIndex index) {
        starts = new int[index.size() * Roll.COUNT + 1];
        PlayGenerator generator = new PlayGenerator();
        int[] planes = new int[Planes.STRIDE];
        int end = 0;
        for (int i = 0; i < index.size(); i++) {
            index.write(i, planes, 0);
            for (Roll roll : Roll.all()) {
                int size = generator.generate(planes, 0, roll.high(), roll.low());
                if (end + size > results.length) {
                    results = Arrays.copyOf(results, 2 * (end + size));
                }
                for (int r = 0; r < size; r++) {
                    results[end++] = index.of(generator.results(), r * Planes.STRIDE);
                }
                starts[i * Roll.COUNT + roll.index() + 1] = end;
            }
        }
    }

    /** Place of the first result of a roll. */
    int from(int arrangement, int roll) {
        return starts[arrangement * Roll.COUNT + roll];
    }

    /** Place after the last result of a roll. */
    int to(int arrangement, int roll) {
        return starts[arrangement * Roll.COUNT + roll + 1];
    }

    /** The result at a place. */
    int at(int place) {
        return results[place];
    }

    /** Number of results of all rolls of all arrangements. */
    int count() {
        return starts[starts.length - 1];
    }
}
