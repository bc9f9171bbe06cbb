package org.pipwright.training.cuda;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.fuzz.Replay;

/** The reader of checkpoints is given again what fuzzing kept. */
class FuzzReplayTest {
    @Test
    void theReaderKeepsItsWord() throws IOException {
        Replay.of(new StateTarget());
    }
}
