package org.pipwright.training.selfplay;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
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
}
