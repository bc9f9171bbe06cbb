package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Exercises from records and from files of positions. */
class DrillSourcesTest {
    private static final String RECORD = "src/docs/evening.txt";

    @TempDir
    Path folder;

    private static JsonNode json(String... words) throws IOException {
        List<String> line = new ArrayList<>(List.of("drill"));
        line.addAll(List.of(words));
        line.addAll(List.of("--lookahead", "0", "--net", "fifth", "--json"));
        Run run = Run.of(line.toArray(String[]::new));
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Schemas.faults("drill", run.out()));
        return new ObjectMapper().readTree(run.out());
    }

    private String file(String... lines) throws IOException {
        return Files.writeString(folder.resolve("mine.txt"), String.join("\n", lines))
                .toString();
    }

    /** What the review of the record says of the same turn, with the same net and lookahead. */
    @Test
    void mistakesOfARecordAreThoseOfItsReview() throws IOException {
        JsonNode drill = json("--from", RECORD, "--grade", "costly", "--player", "mira", "--count", "3");
        assertEquals("records", drill.get("source").asText());
        assertEquals(3, drill.get("questions").size());
        Run run = Run.of("review", RECORD, "--lookahead", "0", "--net", "fifth", "--json");
        JsonNode review = new ObjectMapper().readTree(run.out());
        double last = -100;
        for (JsonNode question : drill.get("questions")) {
            JsonNode played = question.get("played");
            assertEquals("Mira", played.get("player").asText());
            assertEquals(RECORD, played.get("record").asText());
            JsonNode turn = review.get("gamesReviewed")
                    .get(played.get("game").asInt() - 1)
                    .get("turns")
                    .get(played.get("turn").asInt() - 1);
            assertEquals(turn.get("position"), question.get("position"));
            double cost = question.get("cost").asDouble();
            boolean told = false;
            for (JsonNode decision : turn.get("decisions")) {
                told |= Math.abs(decision.get("points").asDouble() - cost) < 2e-6;
            }
            assertTrue(told, turn::toString);
            assertTrue(cost <= -0.04 && cost >= last, "the costliest first");
            last = cost;
        }
    }

    @Test
    void aFileIsAskedLineByLine() throws IOException {
        String file = file("# openings", "start 3-1", "", "start 6-5  # run", "5@8 4@7 3@6 3@10 / 5@8 4@7 3@6 3@11");
        JsonNode questions = json("--positions", file).get("questions");
        assertEquals(3, questions.size());
        assertEquals(List.of("2", "4", "5"), questions.findValuesAsText("line"));
        assertEquals("8/5 6/5", questions.get(0).get("best").asText());
        assertEquals("double", questions.get(2).get("asked").asText());
        Run text = Run.of("drill", "--positions", file, "--title", "Lesson 4", "--lookahead", "0", "--net", "fifth");
        assertTrue(text.out().startsWith("Lesson 4: "), text.out());
        assertTrue(text.out().contains("The next best, "), text.out());
    }

    @Test
    void everyLineThatCannotBeReadIsCounted() throws IOException {
        Run run = Run.of("drill", "--positions", file("start 3-1", "5@99 / 1@1", "start 3-7", "x"));
        assertEquals(2, run.code());
        assertTrue(run.err().contains("mine.txt, line 2: "), run.err());
        assertTrue(run.err().contains("; 2 more of its lines cannot be read"), run.err());
    }

    @Test
    void aPositionWithoutAChoiceIsRefused() throws IOException {
        Run run = Run.of("drill", "--positions", file("1@bar 14@1 / 2@6 2@5 2@4 2@3 2@2 5@1 3-1"));
        assertEquals(2, run.code());
        assertTrue(run.err().contains("line 1: no choice of plays for 3-1"), run.err());
    }
}
