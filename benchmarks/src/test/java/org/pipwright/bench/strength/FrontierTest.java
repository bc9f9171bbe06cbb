package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.bench.cli.Main;

class FrontierTest {
    @TempDir
    Path folder;

    private static Frontier.Timed net(String name, double points, double millis) {
        return new Frontier.Timed(new Stand(name, name, points, 0.003), 1000, 0.002, 0.0001, millis);
    }

    @Test
    void netsThatNoneBeatsInBothAreOnIt() {
        Frontier frontier = new Frontier(
                List.of(net("slow", 0.05, 3), net("quick", 0.01, 1), net("worse", 0.0, 2), net("same", 0.05, 4)));
        List<String> held = frontier.nets().stream()
                .filter(frontier::holds)
                .map(net -> net.stand().name())
                .toList();
        assertEquals(List.of("quick", "slow", "same"), held);
        assertTrue(frontier.table().contains("| **quick** | 0.00 M | +0.0100 ± 0.0030 | 0.00200 ± 0.00010 | 1.000 |"));
        assertTrue(frontier.table().contains("| worse | "));
    }

    @Test
    void pictureNamesEveryNet() throws IOException {
        String svg = FrontierPicture.of(new Frontier(List.of(net("one", 0.01, 0.5), net("other", 0.03, 2))), "Title")
                .svg();
        for (String words : List.of("Title", "one", "other", "milliseconds a decision, one core")) {
            assertTrue(svg.contains(words), words);
        }
    }

    @Test
    void standsAreRead() throws IOException {
        Path file = Files.writeString(
                folder.resolve("stands"), "# what\n\na\tfifth\t+0.01\t0.003\nb\tb.safetensors\t0\t0\n");
        assertEquals(
                List.of(new Stand("a", "fifth", 0.01, 0.003), new Stand("b", "b.safetensors", 0, 0)), Stand.read(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a b c d", "a\tb\tmuch\t0"})
    void otherLinesAreRefused(String line) throws IOException {
        Path file = Files.writeString(folder.resolve("stands"), line);
        StringWriter err = new StringWriter();
        Path suite = Path.of("suite", "reference.jsonl");
        int code = Main.run(
                new PrintWriter(new StringWriter()),
                new PrintWriter(err),
                "frontier",
                "--stands",
                file.toString(),
                "--reference",
                suite.toString(),
                "--out",
                folder.resolve("out").toString());
        assertEquals(2, code);
        assertEquals(1, err.toString().lines().count());
        assertThrows(IllegalArgumentException.class, () -> Stand.read(file));
    }
}
