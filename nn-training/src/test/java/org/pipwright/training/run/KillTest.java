package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.report.Metrics;

/** A real process, killed at random moments again and again: its folder is always sound, and it goes on from there. */
class KillTest {
    private static final int KILLS = 20;
    private static final int LONGEST_MILLIS = 700;

    @TempDir
    Path temporary;

    private Path path() {
        return temporary.resolve("run");
    }

    @Test
    void killedTwentyTimes() throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(12);
        Checkpoint before = null;
        int withCheckpoint = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            List<String> printed = killed(
                    // One in four while it starts or reads its folder, the others while it trains and writes.
                    kill % 4 == 0 ? "ready" : "round", random.nextInt(LONGEST_MILLIS));
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

    /** Starts the process, waits until it has printed a word, and a while; what it has printed by its end. */
    private List<String> killed(String word, int millis) throws IOException, InterruptedException {
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        Path output = temporary.resolve("output");
        Path errors = temporary.resolve("errors");
        Process process = new ProcessBuilder(
                        java.toString(),
                        "-Xmx256m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledRun.class.getName(),
                        path().toString())
                .redirectOutput(output.toFile())
                .redirectError(errors.toFile())
                .start();
        try {
            while (process.isAlive() && !Files.readString(output).contains(word)) {
                Thread.sleep(5);
            }
            Thread.sleep(millis);
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertEquals("", Files.readString(errors));
        return whole(Files.readString(output));
    }

    /** Lines that were printed to the end. */
    private static List<String> whole(String text) {
        return text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
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
        } else {
            assertEquals(null, before, "a model was there before");
        }
        List<Metrics> lines =
                MetricsFile.open(folder.metricsFile(), Long.MAX_VALUE).lines();
        assertTrue(lines.isEmpty() || Files.readString(folder.metricsFile()).endsWith("\n"));
        return newest;
    }
}
