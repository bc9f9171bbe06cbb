package org.pipwright.bench.kills;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Starts commands.
 *
 * @param program what to start, as a user does
 * @param logs folder for what they print
 * @param cache folder of their exact tables
 */
record Launcher(Path program, Path logs, Path cache) {
    /** The same with another folder for tables. */
    Launcher withCache(Path other) {
        return new Launcher(program, logs, other);
    }

    /** Starts a command. */
    Work start(List<String> words) throws IOException {
        Path out = Files.createTempFile(logs, "out", "");
        Path err = Files.createTempFile(logs, "err", "");
        return new Work(process(words, out, err), out, err);
    }

    /** Starts a process whose output goes to two files. */
    Process process(List<String> words, Path out, Path err) throws IOException {
        List<String> line = new ArrayList<>(List.of(program.toString()));
        line.addAll(words);
        ProcessBuilder builder =
                new ProcessBuilder(line).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().put("PIPWRIGHT_CACHE", cache.toString());
        builder.environment().put("PIPWRIGHT_JAVA_OPTIONS", "-Xmx512m");
        return builder.start();
    }
}
