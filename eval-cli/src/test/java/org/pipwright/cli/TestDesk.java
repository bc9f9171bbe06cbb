package org.pipwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.record.GameRecord;

/** Desks on which something was opened, with the net {@code tiny} and one thread. */
final class TestDesk {
    private TestDesk() {}

    static DeskServer open(
            Path folder,
            Function<String, Knowledge> knowledge,
            Map<String, GameRecord> records,
            Map<String, List<Candidate>> positions) {
        return new DeskServer(new DeskSetup(
                        0,
                        List.of("tiny"),
                        knowledge,
                        folder,
                        1,
                        records,
                        positions,
                        folder.resolve(DeskSetup.LOG),
                        Optional.empty()))
                .awaitNet();
    }
}
