package org.pipwright.bench.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.reduced.ErrorSummary;
import org.pipwright.engine.reduced.PolicyValue;
import org.pipwright.engine.reduced.ReducedTable;

/** Tables are solved once and read back; reports say what was found. */
class SolvedGamesTest {
    @TempDir
    Path folder;

    private final ByteArrayOutputStream progress = new ByteArrayOutputStream();

    private ReducedTable table(Path file) throws IOException {
        progress.reset();
        PrintStream out = new PrintStream(progress, true, StandardCharsets.UTF_8);
        return new SolvedGames(out).table(1, file, 1);
    }

    @Test
    void solvesOnceThenReads() throws IOException {
        Path file = folder.resolve("new/one.table");

        ReducedTable solved = table(file);
        assertTrue(progress.toString(StandardCharsets.UTF_8).startsWith("sweep 1, all plays: largest change 3.0e+00"));
        assertTrue(Files.exists(file));
        ReducedTable read = table(file);

        assertTrue(progress.toString(StandardCharsets.UTF_8).startsWith("reading and checking"));
        assertEquals(solved.equity(Position.start(1)), read.equity(Position.start(1)));
    }

    @Test
    void reportsSayTheSame() throws IOException {
        PolicyValue value =
                new PolicyValue(0.1, -0.2, 0.05, 8, new ErrorSummary(0.01, 0.02), new ErrorSummary(0.03, 0.04));

        JsonNode json = new ObjectMapper().readTree(PolicyReport.json(2, value));
        String text = PolicyReport.text(2, value);

        assertEquals(0.05 / 8, json.get("lostPerDecision").asDouble());
        assertEquals(0.02, json.get("errorWhereItsGamesGo").get("p99").asDouble());
        assertEquals(0.03, json.get("errorOverAllPositions").get("mean").asDouble());
        assertTrue(text.contains("loses 0.050000 points a game (starting +0.100000, second -0.200000)"), text);
        assertTrue(text.contains("loses 0.006250 points a decision, at 8.00 decisions a game"), text);
        assertTrue(text.contains("over all positions: mean 0.03000, 99th percentile 0.04000"), text);
    }
}
