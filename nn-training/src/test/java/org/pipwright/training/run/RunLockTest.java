package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** One process trains in a folder at a time, and nothing is left of the lock when it is gone. */
class RunLockTest {
    @TempDir
    Path temporary;

    private String refusal() {
        return "another process is training in '" + temporary + "': stop it first, or use another folder";
    }

    @Test
    void anotherProcessIsKeptOut() throws IOException, InterruptedException {
        RunFolder before = RunFolder.create(temporary, KilledRun.settings());
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledRun.class.getName(),
                        temporary.toString(),
                        "0")
                .start();
        try (BufferedReader out = process.inputReader()) {
            assertEquals("ready", out.readLine());
            assertTrue(out.readLine().startsWith("round"), "it trains");
            Path writing = Files.createFile(temporary.resolve(".net.safetensors.0.part"));
            assertEquals(
                    refusal(),
                    assertThrows(InvalidRunException.class, () -> RunFolder.open(temporary))
                            .getMessage());
            assertTrue(Files.exists(writing), "what the other process may be writing is left alone");
            assertEquals(
                    refusal(),
                    assertThrows(
                                    InvalidRunException.class,
                                    () -> TrainingRun.run(before, 1, new SmallRun(), ReportPage.NONE, () -> false))
                            .getMessage());
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertEquals(
                temporary.resolve("net.safetensors"), RunFolder.open(temporary).modelFile());
    }

    @Test
    void aSecondRunInTheSameProcessIsKeptOutToo() {
        List<String> warnings = new ArrayList<>();
        RunLock lock = RunLock.take(temporary, warnings::add);
        InvalidRunException refused =
                assertThrows(InvalidRunException.class, () -> RunLock.take(temporary, warnings::add));
        assertEquals(refusal(), refused.getMessage());
        lock.close();
        RunLock.take(temporary, warnings::add).close();
        assertEquals(List.of(), warnings);
    }

    /** While another has the lock, nothing at all is written: neither to begin a run nor to make one longer. */
    @Test
    void nothingIsWrittenWithoutTheLock() throws IOException {
        RunLock lock = RunLock.take(temporary, Assertions::fail);
        assertEquals(
                refusal(),
                assertThrows(InvalidRunException.class, () -> RunFolder.create(temporary, SmallRun.SETTINGS))
                        .getMessage());
        try (Stream<Path> files = Files.list(temporary)) {
            assertEquals(List.of(temporary.resolve(RunLock.FILE)), files.toList());
        }
        lock.close();
        RunFolder run = RunFolder.create(temporary, SmallRun.SETTINGS);
        RunLock again = RunLock.take(temporary, Assertions::fail);
        TrainingSettings longer = SmallRun.SETTINGS.with(Setting.GAMES, "9999");
        assertThrows(InvalidRunException.class, () -> run.writeSettings(longer));
        assertEquals(SmallRun.SETTINGS, run.settings());
        again.close();
        run.writeSettings(longer);
        assertEquals(longer, run.settings());
    }

    /** Of several that begin a run in one folder at the same moment, one has it, with its own settings. */
    @Test
    void oneOfManyBeginsTheRun() throws Exception {
        int many = 4;
        ExecutorService threads = Executors.newFixedThreadPool(many);
        try {
            for (int round = 0; round < 50; round++) {
                Path folder = temporary.resolve("run" + round);
                CyclicBarrier start = new CyclicBarrier(many);
                List<Future<TrainingSettings>> runs = new ArrayList<>();
                for (int i = 0; i < many; i++) {
                    TrainingSettings settings = SmallRun.SETTINGS.with(Setting.SEED, Integer.toString(i));
                    runs.add(threads.submit(() -> {
                        start.await();
                        try {
                            RunFolder.create(folder, settings);
                            return settings;
                        } catch (InvalidRunException e) {
                            return null;
                        }
                    }));
                }
                List<TrainingSettings> begun = new ArrayList<>();
                for (Future<TrainingSettings> run : runs) {
                    if (run.get() != null) {
                        begun.add(run.get());
                    }
                }
                assertEquals(List.of(RunFolder.open(folder).settings()), begun);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void aFolderThatIsInUseIsLeftAsItIs() throws IOException {
        Files.createFile(temporary.resolve("letter"));
        assertThrows(InvalidRunException.class, () -> RunFolder.create(temporary, SmallRun.SETTINGS));
        try (Stream<Path> files = Files.list(temporary)) {
            assertEquals(List.of(temporary.resolve("letter")), files.toList());
        }
    }

    @Test
    void whereNothingCanBeLockedAWarningIsGiven() {
        List<String> warnings = new ArrayList<>();
        RunLock.take(temporary.resolve("missing"), warnings::add).close();
        assertEquals(1, warnings.size());
        assertTrue(
                warnings.get(0).matches("cannot lock '.*missing' \\(no such file.*\\): see to it that .*"),
                warnings.get(0));
    }
}
