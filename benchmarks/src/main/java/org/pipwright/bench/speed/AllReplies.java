package org.pipwright.bench.speed;

import java.util.Arrays;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * The work of the benchmarks of deep networks: what replies to all 21 rolls of one position lead to, as a lookahead asks for
 * them, seen by the side that then rolls. The position is the first of net play with enough replies.
 */
final class AllReplies {
    /** Positions: a multiple of 6 and of 20. */
    static final int COUNT = 420;

    private final int[] base;
    private final int[] planes = new int[COUNT * Planes.STRIDE];

    AllReplies() {
        Position parent = BenchPositions.netPlay().stream()
                .filter(position -> fill(position) == COUNT)
                .findFirst()
                .orElseThrow();
        base = parent.swapped().toPlanes();
    }

    private int fill(Position position) {
        PlayGenerator generator = new PlayGenerator();
        int size = 0;
        for (Roll roll : Roll.all()) {
            int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
            for (int i = 0; i < count && size < COUNT; i++) {
                Planes.copySwapped(generator.results(), i * Planes.STRIDE, planes, size++ * Planes.STRIDE);
            }
        }
        return size;
    }

    /** The position they all come from, with the other side on roll. */
    int[] base() {
        return base;
    }

    /** So many positions from one on. */
    int[] planes(int first, int count) {
        return Arrays.copyOfRange(planes, first * Planes.STRIDE, (first + count) * Planes.STRIDE);
    }

    /** The whole inputs of all positions one after another. */
    float[] encoded(FeatureSet set) {
        float[] inputs = new float[COUNT * set.inputs()];
        for (int i = 0; i < COUNT; i++) {
            set.encode(planes, i * Planes.STRIDE, inputs, i * set.inputs());
        }
        return inputs;
    }
}
