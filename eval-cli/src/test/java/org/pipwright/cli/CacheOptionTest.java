package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** All commands that use the tables keep them where they are told. */
class CacheOptionTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank 1@6 1@4 / 1@6 --roll 21",
                "odds 1@6 / 1@6",
                "cube 1@6 / 1@6",
                "rollout 1@6 1@5 / 1@6 1@1 --trials 36",
                "count 1@6 / 1@6",
                "tables"
            })
    void tablesAreKeptInTheFolder(String line, @TempDir Path cache) {
        Run run = Run.of((line + " --cache " + cache).split(" "));
        assertEquals(0, run.code(), run.err());
        assertTrue(Files.isRegularFile(cache.resolve("twosided-6x6-v1.table")), run.err());
        assertTrue(run.err().contains("building the two-sided table (6 checkers on 6 points), once ...\n"), run.err());
    }

    @Test
    void trainingKeepsThemThereToo(@TempDir Path folder) throws IOException {
        Path cache = folder.resolve("cache");
        Path settings = Files.writeString(
                folder.resolve("small"),
                "contact.hidden = 16\nrace.hidden = 16\nround = 16\nevaluation.games = 2\nends = tables\n");
        String line =
                "train --games 16 --settings " + settings + " --out " + folder.resolve("run") + " --cache " + cache;
        Run run = Run.of(line.split(" "));
        assertEquals(0, run.code(), run.err());
        assertTrue(Files.isRegularFile(cache.resolve("onesided-6x15-v1.table")), run.err());
    }
}
