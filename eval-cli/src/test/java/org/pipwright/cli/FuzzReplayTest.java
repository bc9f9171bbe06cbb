package org.pipwright.cli;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.fuzz.Corpus;
import org.pipwright.engine.fuzz.Replay;

/** Readers are given again what fuzzing kept. */
class FuzzReplayTest {
    @ParameterizedTest
    @ValueSource(strings = {"batch.RequestTarget", "desk.AddressTarget", "desk.PracticeLogTarget"})
    void readersKeepTheirWord(String target) throws IOException, ReflectiveOperationException {
        Replay.of(Corpus.target("org.pipwright.cli." + target));
    }
}
