package org.pipwright.training.selfplay;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.position.Planes;

/** The growing list. */
class SamplesTest {
    @Test
    void growsAndKeepsWhatItHolds() {
        Samples samples = new Samples(1);
        int[] planes = new int[3 * Planes.STRIDE];
        float[] target = new float[2 * Outcomes.COUNT];
        for (int i = 0; i < 100; i++) {
            planes[Planes.STRIDE] = i;
            planes[2 * Planes.STRIDE - 1] = -i;
            target[Outcomes.COUNT] = i;
            target[2 * Outcomes.COUNT - 1] = -i;
            samples.add(planes, Planes.STRIDE, target, Outcomes.COUNT);
        }
        assertEquals(100, samples.size());
        for (int i = 0; i < 100; i++) {
            assertEquals(i, samples.planes()[i * Planes.STRIDE]);
            assertEquals(-i, samples.planes()[(i + 1) * Planes.STRIDE - 1]);
            assertEquals(i, samples.targets()[i * Outcomes.COUNT]);
            assertEquals(-i, samples.targets()[(i + 1) * Outcomes.COUNT - 1]);
        }
    }

    /** As many as there are, without the room that was left. */
    @Test
    void travels() {
        for (int size : new int[] {0, 1, 70}) {
            Samples samples = new Samples(64);
            for (int i = 0; i < size; i++) {
                int[] planes = new int[Planes.STRIDE];
                float[] target = new float[Outcomes.COUNT];
                planes[3] = i;
                target[2] = -i;
                samples.add(planes, 0, target, 0);
            }
            Samples there = Post.sent(samples);
            assertEquals(size, there.size());
            assertArrayEquals(
                    Arrays.copyOf(samples.planes(), size * Planes.STRIDE),
                    Arrays.copyOf(there.planes(), size * Planes.STRIDE));
            assertArrayEquals(
                    Arrays.copyOf(samples.targets(), size * Outcomes.COUNT),
                    Arrays.copyOf(there.targets(), size * Outcomes.COUNT));
            assertEquals(Math.max(1, size) * Planes.STRIDE, there.planes().length);
        }
    }
}
