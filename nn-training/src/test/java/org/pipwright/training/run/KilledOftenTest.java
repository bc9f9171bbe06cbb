package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.network.ModelFile;

/** Nothing of what a killed run learns is lost, played twice or left out: its nets are those of an undisturbed run. */
@EnabledIfSystemProperty(
        named = "pipwright.test.complete",
        matches = "true",
        disabledReason = "kills training again and again: -Dpipwright.test.complete=true")
class KilledOftenTest {
    private static final int KILLS = 5;
    private static final int MILLIS = 200;
    private static final long GAMES = 2000;

    @TempDir
    Path temporary;

    private Path path() {
        return temporary.resolve("run");
    }

    @Test
    void killedOftenItEndsWithTheSameBits() throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(13);
        Killer killer = new Killer(temporary);
        long games = 0;
        int onTheWay = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            List<String> before = checkpoints();
            killer.killed(path(), GAMES, output -> !checkpoints().equals(before), random.nextInt(MILLIS));
            Checkpoint newest = RunFolder.open(path()).newest(Assertions::fail);
            long now = newest == null ? 0 : newest.games();
            onTheWay += now > games && now < GAMES ? 1 : 0;
            games = now;
        }
        assertTrue(onTheWay >= KILLS / 2, onTheWay + " kills behind new games and before the end");
        // All by processes without vectors, which add in another order than this one.
        Path whole = temporary.resolve("whole");
        for (Path run : List.of(path(), whole)) {
            killer.killed(run, GAMES, output -> false, 0);
        }
        RunFolder cut = RunFolder.open(path());
        RunFolder through = RunFolder.open(whole);
        Checkpoint expected = through.newest(Assertions::fail);
        assertEquals(GAMES, expected.games());
        Checkpoints.assertSame(expected, cut.newest(Assertions::fail));
        assertEquals(weights(through), weights(cut));
    }

    private static String weights(RunFolder folder) throws IOException {
        return ModelFile.read(folder.modelFile()).notes().get(ModelFile.SHA256);
    }

    /** Names of checkpoints; none while they are being replaced. */
    private List<String> checkpoints() {
        String[] names = path().toFile().list((folder, name) -> name.startsWith("checkpoint-"));
        return names == null ? List.of() : Stream.of(names).sorted().toList();
    }
}
