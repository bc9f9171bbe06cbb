package org.pipwright.training.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.training.report.Metrics;

/** The figures of a run so far. Written as a whole each time: a crash leaves the file of the time before. */
final class MetricsFile {
    private final Path file;
    private final List<Metrics> lines = new ArrayList<>();

    private MetricsFile(Path file) {
        this.file = file;
    }

    /** Opens the file of a run; lines about games beyond the checkpoint will be played again, so they are dropped. */
    static MetricsFile open(Path file, long games) throws IOException {
        MetricsFile metrics = new MetricsFile(file);
        if (Files.exists(file)) {
            try {
                Files.readAllLines(file, StandardCharsets.UTF_8).stream()
                        .skip(1)
                        .map(Metrics::ofCsv)
                        .filter(line -> line.games() <= games)
                        .forEach(metrics.lines::add);
            } catch (NumberFormatException e) {
                throw new InvalidRunException(
                        "'" + file + "' is not as this run wrote it: move it away to go on without");
            }
        }
        return metrics;
    }

    void add(Metrics line) {
        lines.add(line);
    }

    void write() throws IOException {
        StringBuilder text = new StringBuilder(Metrics.HEADER).append('\n');
        lines.forEach(metrics -> text.append(metrics.toCsv()).append('\n'));
        RunFiles.write(file, text.toString());
    }

    List<Metrics> lines() {
        return List.copyOf(lines);
    }
}
