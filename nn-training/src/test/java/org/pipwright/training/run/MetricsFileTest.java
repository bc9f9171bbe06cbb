package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.training.report.Evaluation;
import org.pipwright.training.report.Metrics;

/** The figures there and back. */
class MetricsFileTest {
    @TempDir
    Path folder;

    private static Metrics line(long games) {
        return new Metrics(
                games,
                12.5,
                1000.5,
                0.75,
                0.5,
                0.7,
                0.002,
                55.25,
                0.25,
                0.0125,
                -0.0625,
                new Evaluation(20, 1.5, 0.125));
    }

    private Path write(long... games) throws IOException {
        Path file = folder.resolve("metrics.csv");
        MetricsFile metrics = MetricsFile.open(file, 0);
        for (long g : games) {
            metrics.add(line(g));
        }
        metrics.write();
        return file;
    }

    @Test
    void thereAndBack() throws IOException {
        Path file = write(100, 200);
        assertEquals(List.of(line(100), line(200)), MetricsFile.open(file, 200).lines());
        List<String> lines = Files.readAllLines(file);
        assertEquals(3, lines.size());
        assertEquals(Metrics.HEADER, lines.get(0));
        assertEquals(
                "100,12.5,1000.5,0.75000,0.50000,0.7000,2.000e-03,55.25,0.2500,0.0125,-0.0625,20,1.5000,0.1250",
                lines.get(1));
    }

    /** What will be played again is dropped. */
    @Test
    void linesBeyondTheCheckpoint() throws IOException {
        Path file = write(100, 200, 300);
        assertEquals(List.of(line(100), line(200)), MetricsFile.open(file, 299).lines());
        assertEquals(List.of(), MetricsFile.open(file, 99).lines());
    }

    @Test
    void missingFileIsEmpty() throws IOException {
        assertEquals(
                List.of(), MetricsFile.open(folder.resolve("none.csv"), 100).lines());
    }

    @ParameterizedTest
    @ValueSource(strings = {"100,2", "x,12.5,1,1,1,1,1,1,1,1,1,20,1,1", "a line of words"})
    void spoiltFileIsRefused(String line) throws IOException {
        Path file = folder.resolve("metrics.csv");
        Files.writeString(file, Metrics.HEADER + "\n" + line + "\n");
        String message = assertThrows(InvalidRunException.class, () -> MetricsFile.open(file, 100))
                .getMessage();
        assertTrue(message.contains("is not as this run wrote it: move it away"), message);
    }
}
