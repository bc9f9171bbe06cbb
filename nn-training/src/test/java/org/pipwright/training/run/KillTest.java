package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.report.Metrics;

/** A real process, killed at random moments again and again: its folder is always sound, and it goes on from there. */
@EnabledIfSystemProperty(
        named = "pipwright.test.complete",
        matches = "true",
        disabledReason = "kills training again and again: -Dpipwright.test.complete=true")
class KillTest {
    private static final int KILLS = 20;
    private static final int LONGEST_MILLIS = 700;

    @TempDir
    Path temporary;

    private boolean hasModel;

    private Path path() {
        return temporary.resolve("run");
    }

    @Test
    void killedTwentyTimes() throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(12);
        // None lives long enough for the second compiler to pay.
        Killer killer = new Killer(temporary, "-XX:TieredStopAtLevel=1");
        Checkpoint before = null;
        int withCheckpoint = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            // One in four while it starts or reads its folder, the others while it trains and writes.
            String word = kill % 4 == 0 ? "ready" : "round";
            // The fourth waits for a net, and so for a checkpoint, however busy the machine is.
            Path due = kill == 3 ? path().resolve("net.safetensors") : temporary;
            List<String> printed = killer.killed(
                    path(), 0, output -> output.contains(word) && Files.exists(due), random.nextInt(LONGEST_MILLIS));
            assertEquals("ready", printed.get(0));
            assertTrue(
                    printed.stream().allMatch(line -> line.matches("ready|round \\d+ [\\d.E-]+")), printed.toString());
            if (Files.exists(path().resolve("settings.txt"))) {
                before = requireSound(before, printed.subList(1, printed.size()));
                withCheckpoint += before == null ? 0 : 1;
            }
        }
        assertTrue(withCheckpoint > KILLS / 2, withCheckpoint + " kills after the first checkpoint");
    }

    /** Checks every file; the newest checkpoint, if there is one, must hold all but the last interval. */
    private Checkpoint requireSound(Checkpoint before, List<String> rounds) throws IOException {
        RunFolder folder = RunFolder.open(path());
        assertEquals(KilledRun.settings(), folder.settings());
        Checkpoint newest = folder.newest(Assertions::fail);
        long games = newest == null ? 0 : newest.games();
        double seconds = newest == null ? 0 : newest.seconds();
        assertTrue(before == null || newest != null && games >= before.games(), "games went back");
        if (!rounds.isEmpty()) {
            assertTrue(Long.parseLong(rounds.get(rounds.size() - 1).split(" ")[1]) >= games);
        }
        // A checkpoint is due after the round that completes the interval: before the next is printed, it is written.
        if (rounds.size() > 1) {
            double lost = Double.parseDouble(rounds.get(rounds.size() - 2).split(" ")[2]) - seconds;
            assertTrue(lost < KilledRun.CHECKPOINT_SECONDS + 0.001, lost + " seconds lost");
        }
        if (Files.exists(folder.modelFile())) {
            ModelFile.read(folder.modelFile());
            hasModel = true;
        } else {
            // A checkpoint is written before the model: the first process may have been killed between them.
            assertFalse(hasModel, "a model was there before");
        }
        List<Metrics> lines =
                MetricsFile.open(folder.metricsFile(), Long.MAX_VALUE).lines();
        assertTrue(lines.isEmpty() || Files.readString(folder.metricsFile()).endsWith("\n"));
        return newest;
    }
}
