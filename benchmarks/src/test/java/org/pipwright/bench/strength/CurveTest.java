package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.bench.cli.Main;

class CurveTest {
    @TempDir
    Path folder;

    private final StringWriter err = new StringWriter();

    private int drawn(String stands) throws IOException {
        Path file = Files.writeString(folder.resolve("night.tsv"), stands);
        return Main.run(
                new PrintWriter(new StringWriter()),
                new PrintWriter(err),
                "curve",
                "--stands",
                file.toString(),
                "--title",
                "A night",
                "--out",
                folder.resolve("out").toString());
    }

    @Test
    void aPictureIsCalledAsItsFile() throws IOException {
        assertEquals(0, drawn("# minutes\n60\ta.safetensors\t-0.012\t0.003\n480\tb.safetensors\t0.041\t0.003\n"));
        String svg = Files.readString(folder.resolve("out/night.svg"));
        for (String words : List.of("A night", "minutes of training")) {
            assertTrue(svg.contains(words), words);
        }
        assertTrue(Files.size(folder.resolve("out/night.png")) > 1000);
    }

    @Test
    void aNameThatIsNoTimeIsRefused() throws IOException {
        assertEquals(2, drawn("late\ta.safetensors\t0.01\t0.003\n"));
        assertEquals(1, err.toString().lines().count());
        assertTrue(err.toString().contains("minutes"), err.toString());
        assertFalse(Files.exists(folder.resolve("out/night.svg")));
    }
}
