package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.report.Metrics;

/** A real process, killed at random moments again and again: its folder is always sound, and it goes on from there. */
class KillTest {
    private static final int KILLS = 20;
    private static final int LONGEST_MILLIS = 700;

    private static final int COUNTED_KILLS = 5;
    private static final int COUNTED_MILLIS = 200;
    private static final long COUNTED_GAMES = 2000;

    @TempDir
    Path temporary;

    private boolean hasModel;

    private Path path() {
        return temporary.resolve("run");
    }

    @Test
    void killedTwentyTimes() throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(12);
        Checkpoint before = null;
        int withCheckpoint = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            // One in four while it starts or reads its folder, the others while it trains and writes.
            String word = kill % 4 == 0 ? "ready" : "round";
            List<String> printed = killed(path(), 0, output -> output.contains(word), random.nextInt(LONGEST_MILLIS));
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

    /** Nothing of what it learns is lost, played twice or left out: its nets are those of a run that nobody disturbed. */
    @Test
    void killedOftenItEndsWithTheSameBits() throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(13);
        long games = 0;
        int onTheWay = 0;
        for (int kill = 0; kill < COUNTED_KILLS; kill++) {
            List<String> before = checkpoints();
            killed(path(), COUNTED_GAMES, output -> !checkpoints().equals(before), random.nextInt(COUNTED_MILLIS));
            Checkpoint newest = RunFolder.open(path()).newest(Assertions::fail);
            long now = newest == null ? 0 : newest.games();
            onTheWay += now > games && now < COUNTED_GAMES ? 1 : 0;
            games = now;
        }
        assertTrue(onTheWay >= COUNTED_KILLS / 2, onTheWay + " kills behind new games and before the end");
        // All by processes without vectors, which add in another order than this one.
        Path whole = temporary.resolve("whole");
        for (Path run : List.of(path(), whole)) {
            killed(run, COUNTED_GAMES, output -> false, 0);
        }
        RunFolder cut = RunFolder.open(path());
        RunFolder through = RunFolder.open(whole);
        Checkpoint expected = through.newest(Assertions::fail);
        assertEquals(COUNTED_GAMES, expected.games());
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

    /** Starts the process, waits until what it has printed will do, and a while; what it has printed by its end. */
    private List<String> killed(Path folder, long games, Predicate<String> reached, int millis)
            throws IOException, InterruptedException {
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
                        folder.toString(),
                        Long.toString(games))
                .redirectOutput(output.toFile())
                .redirectError(errors.toFile())
                .start();
        try {
            while (process.isAlive() && !reached.test(Files.readString(output))) {
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
