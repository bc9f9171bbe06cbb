package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;

/** A run whose folder cannot be written to for a while; here because it has been moved away. */
class DiskTroubleTest {
    private static final long RETRY_MILLIS = 5;
    private static final int TRIES = 10;

    @TempDir
    Path temporary;

    private Path path() {
        return temporary.resolve("run");
    }

    private static void move(Path from, Path to) {
        try {
            Files.move(from, to);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Moves the folder away after the first round. */
    private SmallRun trouble() {
        return new SmallRun() {
            @Override
            public void round(double progress, long games, double rate, double secondsLeft, Metrics latest) {
                super.round(progress, games, rate, secondsLeft, latest);
                if (rounds.size() == 1) {
                    move(path(), temporary.resolve("away"));
                }
            }
        };
    }

    @Test
    void waitsAndGoesOn() throws IOException {
        SmallRun run = trouble();
        // Asked before every round and after every failed try: puts the folder back after some of these.
        AtomicInteger tries = new AtomicInteger();
        BooleanSupplier stop = () -> {
            if (!run.warnings.isEmpty() && tries.incrementAndGet() == TRIES) {
                move(temporary.resolve("away"), path());
            }
            return false;
        };
        TrainingRun.run(RunFolder.create(path(), SmallRun.SETTINGS), 1, null, run, ReportPage.NONE, stop, RETRY_MILLIS);
        assertTrue(tries.get() >= TRIES);
        assertEquals(1, run.warnings.size(), "one warning, not one a try");
        String warning = run.warnings.get(0);
        assertTrue(warning.startsWith("cannot write a checkpoint: no such file, "), warning);
        assertTrue(warning.endsWith("; training pauses and goes on when it can"), warning);

        SmallRun.finish(temporary.resolve("calm"), SmallRun.SETTINGS, 1);
        Checkpoints.assertSame(Checkpoints.newest(temporary.resolve("calm")), Checkpoints.newest(path()));
        assertEquals(
                1,
                MetricsFile.open(RunFolder.open(path()).metricsFile(), 150)
                        .lines()
                        .size());
    }

    @Test
    void stopEndsTheWaiting() {
        SmallRun run = trouble();
        AtomicInteger tries = new AtomicInteger();
        BooleanSupplier stop = () -> !run.warnings.isEmpty() && tries.incrementAndGet() == TRIES;
        RunFolder folder = RunFolder.create(path(), SmallRun.SETTINGS);
        String message = assertThrows(
                        InvalidRunException.class,
                        () -> TrainingRun.run(folder, 1, null, run, ReportPage.NONE, stop, RETRY_MILLIS))
                .getMessage();
        assertEquals(1, run.warnings.size());
        assertTrue(message.startsWith("cannot write a checkpoint: no such file, "), message);
        assertTrue(message.endsWith("; --resume goes on from the checkpoint before"), message);
    }

    @Test
    void interruptEndsTheWaiting() {
        SmallRun run = trouble();
        BooleanSupplier stop = () -> {
            if (!run.warnings.isEmpty()) {
                Thread.currentThread().interrupt();
            }
            return false;
        };
        RunFolder folder = RunFolder.create(path(), SmallRun.SETTINGS);
        String message = assertThrows(
                        InvalidRunException.class,
                        () -> TrainingRun.run(folder, 1, null, run, ReportPage.NONE, stop, RETRY_MILLIS))
                .getMessage();
        assertTrue(Thread.interrupted());
        assertEquals("interrupted while waiting for room on the disk", message);
    }
}
