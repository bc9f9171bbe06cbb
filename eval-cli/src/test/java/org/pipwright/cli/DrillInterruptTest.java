package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A real process that is told to end: it writes the exercises found so far. */
@DisabledOnOs(OS.WINDOWS)
class DrillInterruptTest {
    @Test
    void whatIsFoundIsWritten(@TempDir Path folder) throws Exception {
        Interrupts.assumeHeard();
        Path errors = folder.resolve("errors");
        // Openings so unlike each other are soon used up: it would search for days.
        String line = "drill opening --count 200 --apart 12 --lookahead 0 --most-games 100000000 --json --net ";
        Process process = new ProcessBuilder((Path.of(System.getProperty("java.home"), "bin", "java") + " -Xmx256m -cp "
                                + System.getProperty("java.class.path") + " org.pipwright.cli.Main " + line
                                + TestNet.path())
                        .split(" "))
                .redirectError(errors.toFile())
                .start();
        while (process.isAlive() && !Files.readString(errors).contains(" positions so far, from ")) {
            Thread.sleep(20);
        }
        Interrupts.send(process);
        JsonNode questions =
                new ObjectMapper().readTree(process.getInputStream()).get("questions");
        process.waitFor();
        assertTrue(questions.size() > 0 && questions.size() < 200, questions::toString);
        String told = "only " + questions.size() + " of 200 positions found: the search was stopped";
        assertTrue(Files.readString(errors).contains(told), Files.readString(errors));
    }
}
