package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assertions;
import org.pipwright.training.learner.LearnerState;

/** Checkpoints made, found and compared. */
final class Checkpoints {
    private Checkpoints() {}

    static Checkpoint small(long round) {
        return new Checkpoint(
                round,
                round * 512,
                round * 30_000,
                1.5 * round,
                0.25,
                new LearnerState(round, List.of(new float[] {1, -2.5f, Float.MIN_VALUE}, new float[0])),
                new LearnerState(-round, List.of(new float[] {0.1f * round})),
                Optional.empty());
    }

    /** The newest of a folder, which must be there without a warning. */
    static Checkpoint newest(Path folder) {
        Checkpoint newest = RunFolder.open(folder).newest(Assertions::fail);
        Assertions.assertNotNull(newest);
        return newest;
    }

    /** Bit for bit, but for the time it took. */
    static void assertSame(Checkpoint expected, Checkpoint found) {
        assertEquals(expected.round(), found.round());
        assertEquals(expected.games(), found.games());
        assertEquals(expected.samples(), found.samples());
        assertEquals(expected.rateScale(), found.rateScale());
        assertSame(expected.contact(), found.contact());
        assertSame(expected.race(), found.race());
    }

    private static void assertSame(LearnerState expected, LearnerState found) {
        assertEquals(expected.steps(), found.steps());
        assertEquals(expected.arrays().size(), found.arrays().size());
        for (int i = 0; i < expected.arrays().size(); i++) {
            assertArrayEquals(expected.arrays().get(i), found.arrays().get(i));
        }
    }
}
