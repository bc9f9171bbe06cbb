package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.network.ModelFile;

/** A real process, killed while it trains and writes: its folder is always sound, and it goes on from there. */
@EnabledIfSystemProperty(
        named = "pipwright.test.complete",
        matches = "true",
        disabledReason = "kills training again and again: -Dpipwright.test.complete=true")
class CardKillTest {
    private static final int KILLS = 4;
    private static final List<ResidualShape> SHAPES = List.of(new ResidualShape(128, 1), new ResidualShape(128, 1));

    @TempDir
    Path temporary;

    @Test
    void killedAgainAndAgain() throws IOException, InterruptedException {
        Path run = temporary.resolve("run");
        Path settings = Files.writeString(temporary.resolve("settings"), """
                minutes = 100000
                deep = 128x1
                quick = 128x1
                copy.seconds = 0.2
                games = 2
                batch = 64
                memory = 1000
                rival = fifth
                evaluation.seconds = 100000
                evaluation.pairs = 2
                checkpoint.seconds = 0.1
                """);
        RunState before = new RunState(0, 0, Double.NaN, 0, 0, 0, List.of());
        for (int kill = 0; kill < KILLS; kill++) {
            killed(run, settings, before.seconds(), 37 * kill);
            RunState now = newest(run).orElseThrow();
            assertTrue(now.seconds() > before.seconds() && now.seeds() > before.seeds(), now.toString());
            try (Stream<Path> files = Files.list(run)) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".safetensors")).toList()) {
                    ModelFile.read(file);
                }
            }
            before = now;
        }
        assertEquals(KILLS - 1, Files.readString(run.resolve("run.txt")).split("resumed = ").length - 1);
    }

    /** The newest checkpoint; a damaged one would be told of, and fail. */
    private static Optional<RunState> newest(Path run) {
        return CardFolder.open(run).newest(SHAPES, line -> {
            throw new AssertionError(line);
        });
    }

    /** Starts the process, waits until it has written a checkpoint later than a time, and a while; kills it. */
    private void killed(Path run, Path settings, double after, int millis) throws IOException, InterruptedException {
        Path errors = temporary.resolve("errors");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-XX:+UseSerialGC",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledCardRun.class.getName(),
                        run.toString(),
                        settings.toString())
                .redirectOutput(temporary.resolve("output").toFile())
                .redirectError(errors.toFile())
                .start();
        try {
            while (process.isAlive() && !hasLater(run, after)) {
                Thread.sleep(20);
            }
            Thread.sleep(millis);
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertEquals("", Files.readString(errors));
    }

    private static boolean hasLater(Path run, double after) {
        if (!Files.exists(run.resolve("settings.txt"))) {
            return false;
        }
        try {
            return CardFolder.open(run)
                    .newest(SHAPES, line -> {})
                    .filter(state -> state.seconds() > after)
                    .isPresent();
        } catch (org.pipwright.training.run.InvalidRunException e) {
            // The file that was read has just been replaced by newer ones.
            return false;
        }
    }
}
