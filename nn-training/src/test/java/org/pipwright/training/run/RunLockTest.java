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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
                        temporary.toString())
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
                                    () -> TrainingRun.run(before, 1, new SmallRun(), () -> false))
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
