package org.pipwright.engine;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.fuzz.Corpus;
import org.pipwright.engine.fuzz.Replay;

/** Readers are given again what fuzzing kept. */
class FuzzReplayTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "position.PositionTarget",
                "position.PositionJsonTarget",
                "play.PlayTarget",
                "record.RecordTarget",
                "record.SgfTarget",
                "matchtable.MatchTableTarget",
                "network.ModelTarget",
                "bearoff.TableTarget",
                "reduced.ReducedTableTarget",
                "rollout.RolloutSaveTarget",
                "review.ReviewSaveTarget"
            })
    void readersKeepTheirWord(String target) throws IOException, ReflectiveOperationException {
        Replay.of(Corpus.target("org.pipwright.engine." + target));
    }
}
