package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.files.SealedLines;

/** A review that would take hours, in a process of its own, ended politely from outside. */
class ReviewInterruptTest {
    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "ends processes without asking them")
    void anInterruptKeepsWhatWasFoundAndSaysHowToGoOn(@TempDir Path folder) throws Exception {
        Path kept = folder.resolve("kept");
        Path errors = folder.resolve("errors");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "--add-modules",
                        "jdk.incubator.vector",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "org.pipwright.cli.Main",
                        "review",
                        "src/docs/evening.txt",
                        "--lookahead",
                        "3",
                        "--save",
                        kept.toString(),
                        "--net",
                        TestNet.path())
                .redirectError(errors.toFile())
                .redirectOutput(new File(folder.toFile(), "out"))
                .start();
        while (!Files.exists(kept) && process.isAlive()) {
            TimeUnit.MILLISECONDS.sleep(50);
        }
        process.destroy();
        process.waitFor();
        assertTrue(told(errors), Files.readString(errors));
        List<String> lines =
                SealedLines.parse("pipwright-review 2", Files.readString(kept)).orElseThrow();
        assertTrue(lines.contains("lookahead 3"), lines.toString());
        assertEquals(0, Files.size(folder.resolve("out")));
    }

    private static boolean told(Path errors) throws IOException {
        String text = Files.readString(errors);
        return text.contains("pipwright: stopped ") && text.contains("kept goes on");
    }
}
