package org.pipwright.training;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.fuzz.Corpus;
import org.pipwright.engine.fuzz.Replay;

/** Readers are given again what fuzzing kept. */
class FuzzReplayTest {
    @ParameterizedTest
    @ValueSource(strings = {"settings.SettingsTarget", "run.CheckpointTarget"})
    void readersKeepTheirWord(String target) throws IOException, ReflectiveOperationException {
        Replay.of(Corpus.target("org.pipwright.training." + target));
    }
}
