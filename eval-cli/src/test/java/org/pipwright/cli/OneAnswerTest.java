package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

/** The same race asked in every way: a net alone would play another play. */
class OneAnswerTest {
    private static final String RACE = "5@8 4@7 3@6 3@10 / 5@8 4@7 3@6 3@11";
    private static final String BEST = "8/3 7/5";

    private static JsonNode json(String line) throws IOException {
        List<String> words = new ArrayList<>(List.of(line.split(" ")));
        words.addAll(1, List.of(RACE.split(" ")));
        return new ObjectMapper().readTree(Run.of(words.toArray(new String[0])).out());
    }

    /** What is wanted of the plays of a ranking: each with its equity without the cube, in the order of the ranking. */
    private static List<String> plays(JsonNode ranking) {
        List<String> plays = new ArrayList<>();
        ranking.get("plays")
                .forEach(play -> plays.add(play.get("playText").asText() + " "
                        + play.get("equity").asText() + " " + play.get("basis").asText()));
        return plays;
    }

    @Test
    void everyCommandSaysTheSame(@TempDir Path folder) throws IOException {
        List<String> alone = plays(json("rank --roll 5-2 --json"));
        assertEquals(16, alone.size());
        assertTrue(alone.get(0).startsWith(BEST + " ") && alone.get(0).endsWith("by simulation"), alone.get(0));
        assertEquals(alone, plays(json("rank --roll 5-2 --json --lookahead 1")));
        assertEquals(alone, plays(json("rank --roll 5-2 --json --cube 1")));
        assertEquals(alone, plays(json("rank --roll 5-2 --json --away 3,5")));
        Path lines = Files.writeString(folder.resolve("lines"), RACE + " 5-2\n", StandardCharsets.UTF_8);
        for (String cube : List.of("", " --cube 1")) {
            Run batch = Run.of(("rank --batch " + lines + cube).split(" "));
            assertEquals(alone, plays(new ObjectMapper().readTree(batch.out())));
        }
        String sheet = Run.of("drill", "--positions", lines.toString()).out();
        assertTrue(sheet.contains("1. " + BEST) && sheet.contains(BEST + " +0.22"), sheet);
        try (Judge judge = Judge.open(ModelCatalog.shipped().load("standard"))) {
            Question question = Question.of(PositionText.parse(RACE), Roll.parse("5-2"));
            PlayVerdict best = judge.ask(question, Effort.STATIC).best();
            assertEquals(
                    alone.get(0),
                    String.format(
                            "%s %s %s",
                            best.play(), millionths(best), best.basis().title()));
        }
        assertTrue(plays(json("rank --roll 5-2 --json --no-simulation --net fifth"))
                .get(0)
                .startsWith("10/5 6/4 "));
    }

    private static String millionths(PlayVerdict play) {
        return Double.toString(Math.round(play.value() * 1e6) / 1e6);
    }

    @Test
    void rolloutsCompareThePlaysThatRankFindsBest() throws IOException {
        String games = "rollout --roll 5-2 --json --trials 36 --truncate 1 --top 1";
        for (String cube : List.of("", " --cube 1")) {
            JsonNode rollout = json(games + cube);
            assertTrue(rollout.toString().contains("\"" + BEST + "\""), rollout.toString());
            assertTrue(
                    json(games + cube + " --no-simulation --net fifth")
                            .toString()
                            .contains("\"10/5 6/4\""),
                    "the net's candidate");
        }
    }
}
