package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.PositionText;

class DrillCommandTest {
    private static Run drill(String line) {
        List<String> words = new ArrayList<>(List.of("drill"));
        words.addAll(Arrays.asList(line.split(" ")));
        words.addAll(List.of("--lookahead", "0", "--net", "fifth"));
        return Run.of(words.toArray(String[]::new));
    }

    /** A sheet about plays, which takes longer to find than one about the cube: made once. */
    private static final class Hitting {
        static final String LINE = "hitting --count 2 --seed 3 --json --threads ";
        static final Run BY_FOUR = drill(LINE + "4");
    }

    private static JsonNode json(Run run) throws IOException {
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Schemas.faults("drill", run.out()));
        return new ObjectMapper().readTree(run.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"hitting", "bearing-off", "race-doubles", "takes-and-passes", "match-scores"})
    void jsonKeepsToItsSchema(String theme) throws IOException {
        JsonNode json = json(theme.equals("hitting") ? Hitting.BY_FOUR : drill(theme + " --count 2 --seed 3 --json"));
        assertEquals(theme, json.get("theme").asText());
        assertEquals(3, json.get("seed").asInt());
        assertEquals("builder", json.get("weaker").get("name").asText());
        assertEquals(2, json.get("questions").size());
        for (JsonNode question : json.get("questions")) {
            assertTrue(question.get("cost").asDouble() <= -0.08);
            assertTrue(question.get("margin").asDouble() >= 0.04);
            assertTrue(question.get("bestSentences").size() > 1);
            assertEquals(question.has("plays"), question.get("weakerSentences").size() > 0);
        }
    }

    /** The commands that judge single positions agree with the answers. */
    @Test
    void rankGivesTheSameAnswers() throws IOException {
        for (JsonNode question : json(Hitting.BY_FOUR).get("questions")) {
            Run rank = Run.of(
                    "rank",
                    question.get("positionText").asText(),
                    "--roll",
                    question.get("roll").asText(),
                    "--net",
                    "fifth",
                    "--json");
            JsonNode plays = new ObjectMapper().readTree(rank.out()).get("plays");
            assertReasons(question);
            assertEquals(plays.get(0).get("playText"), question.get("best"));
            assertEquals(
                    -plays.get(1).get("cost").asDouble(), question.get("margin").asDouble(), 1e-6);
            for (JsonNode play : plays) {
                if (play.get("playText").equals(question.get("weaker"))) {
                    assertEquals(
                            play.get("cost").asDouble(), question.get("cost").asDouble(), 1e-6);
                }
            }
        }
    }

    /** {@code rank --explain} of the two plays says the same. */
    private static void assertReasons(JsonNode question) throws IOException {
        String best = question.get("best").asText();
        String weaker = question.get("weaker").asText();
        Run rank = Run.of(
                "rank",
                question.get("positionText").asText(),
                "--roll",
                question.get("roll").asText(),
                "--plays",
                best + "; " + weaker,
                "--net",
                "fifth",
                "--explain",
                "--json");
        JsonNode explained = new ObjectMapper().readTree(rank.out()).at("/explanation/plays");
        assertEquals(explained.at("/1/sentences"), question.get("weakerSentences"));
        JsonNode told = question.get("bestSentences");
        for (int i = 0; i < told.size(); i++) {
            assertEquals(explained.at("/0/sentences/" + i), told.get(i));
        }
    }

    /** With contact: a race is played out by cube, where a drill asks the net. */
    @Test
    void cubeGivesTheSameAnswers() throws IOException {
        int compared = 0;
        for (JsonNode question : json(drill("match-scores --count 4 --json")).get("questions")) {
            if (!PositionText.parse(question.get("positionText").asText()).contact()) {
                continue;
            }
            compared++;
            JsonNode match = question.get("match");
            List<String> line =
                    new ArrayList<>(List.of("cube", question.get("positionText").asText()));
            line.addAll(List.of(
                    "--away",
                    match.get("mine").asText() + "," + match.get("theirs").asText()));
            if (question.get("cube").get("value").asInt() > 1) {
                line.addAll(List.of("--cube", "2", "--owner", "me"));
            }
            line.addAll(List.of("--lookahead", "0", "--net", "fifth", "--json"));
            Run cube = Run.of(line.toArray(String[]::new));
            JsonNode judged = new ObjectMapper().readTree(cube.out());
            boolean answering = question.get("asked").asText().equals("take");
            assertEquals(judged.get(answering ? "answer" : "action"), question.get("best"));
            String weak = question.get("weaker").asText();
            assertEquals(
                    judged.get("costs").get(weak).asDouble(),
                    question.get("cost").asDouble() * question.get("unit").asDouble(),
                    2e-6);
        }
        assertTrue(compared > 0);
    }

    @Test
    void threadsDoNotMatterAndTheSeedDoes() {
        assertEquals(drill(Hitting.LINE + "1"), Hitting.BY_FOUR);
        String line = "opening --count 2 --json --seed ";
        assertFalse(drill(line + "2").out().equals(drill(line + "1").out()));
    }

    @ParameterizedTest
    @CsvSource({"opening, Play ", "takes-and-passes, take or pass?", "race-doubles, or roll?"})
    void theTextHasQuestionsBeforeAnswers(String theme, String prompt) {
        Run run = drill(theme + " --count 2");
        assertEquals(0, run.code(), run.err());
        String[] halves = run.out().split("\nAnswers\n");
        assertEquals(2, halves.length, run.out());
        for (String number : List.of("\n1. ", "\n2. ")) {
            assertTrue(halves[0].contains(number), halves[0]);
            assertTrue(halves[1].contains(number), halves[1]);
        }
        assertTrue(halves[0].contains(prompt), halves[0]);
        assertFalse(halves[0].contains("gives away 0.0") && halves[0].contains("chooses"), halves[0]);
        assertEquals(2, halves[1].split("A weaker player chose ", -1).length - 1, halves[1]);
    }

    @Test
    void whatIsMissingIsTold() {
        Run none = drill("priming --cost 6 --most-games 16");
        assertEquals(2, none.code());
        assertTrue(none.err().contains("no position found: lower --cost"), none.err());
        Run few = drill("opening --count 200 --most-games 32");
        assertEquals(0, few.code());
        assertTrue(few.err().matches("(?s).*only \\d+ of 200 positions found: [^\n]*\n"), few.err());
    }

    @Test
    void progressIsTold() {
        assertTrue(drill("opening --count 12").err().matches("(?s)(\\d+ of 12 positions so far, from \\d+ games\n)+"));
    }
}
