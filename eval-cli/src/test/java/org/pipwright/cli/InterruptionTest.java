package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A real process that is told to end: it reports what is known. */
@DisabledOnOs(OS.WINDOWS)
class InterruptionTest {
    private static Process start(String... args) throws IOException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = new ArrayList<>(
                List.of(java, "-Xmx256m", "-cp", System.getProperty("java.class.path"), "org.pipwright.cli.Main"));
        command.addAll(List.of(args));
        return new ProcessBuilder(command).redirectError(new File("/dev/null")).start();
    }

    /** Ends the process politely when it has had time to play some games. */
    @ParameterizedTest
    @ValueSource(strings = {"duel racer builder", "standings racer builder"})
    void whatIsKnownIsReported(String line) throws Exception {
        Process process = start((line + " --games 2000000000").split(" "));
        assertEquals(false, process.waitFor(5, TimeUnit.SECONDS), "it would play for hours");
        // By its handle: Process.destroy would also close the stream that is read below.
        process.toHandle().destroy();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(20, TimeUnit.SECONDS), "it ends");
        assertTrue(out.matches("(?s).* [1-9]\\d* games in pairs, seed 1\n.*[+-]\\d\\.\\d{4}.*"), out);
    }
}
