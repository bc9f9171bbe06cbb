package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.Judgement;

/** Ranking with the cube, from the command line. */
class CubefulRankTest {
    private static Run run(String line) {
        return Run.of((line + " --net " + TestNet.path()).split(" "));
    }

    private static JsonNode json(String line) throws IOException {
        Run run = run(line + " --json");
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Schemas.faults("rank", run.out()));
        return new ObjectMapper().readTree(run.out());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void jsonHasWhatTheRankerSays(int lookahead) throws IOException {
        MatchStakes stakes = new MatchStakes(new MatchScore(2, 4, false));
        JsonNode json = json("rank start --roll 6-4 --away 2,4 --lookahead " + lookahead);
        List<CubefulPlay> expected;
        try (CubefulRanker ranker = new CubefulRanker(
                () -> Judgement.by(new NetworkEvaluator(TestNet.MODEL)),
                () -> new MatchTerms(stakes, ShippedMatchTable.load()),
                1)) {
            expected = ranker.rank(Position.start(), Roll.of(6, 4), CubeState.START, lookahead);
        }
        assertEquals(expected.size(), json.get("plays").size());
        double bestEquity = expected.stream()
                .mapToDouble(play -> play.outcomes().equity())
                .max()
                .orElseThrow();
        for (int i = 0; i < expected.size(); i++) {
            CubefulPlay play = expected.get(i);
            JsonNode shown = json.get("plays").get(i);
            assertEquals(play.play().toString(), shown.get("playText").asText());
            assertEquals(play.value(), shown.get("cubefulValue").asDouble(), 1e-6);
            assertEquals(play.cost(), shown.get("cubefulCost").asDouble(), 1e-6);
            assertEquals(play.grade().word(), shown.get("cubefulGrade").asText());
            assertEquals(play.outcomes().equity(), shown.get("equity").asDouble(), 1e-6);
            assertEquals(
                    play.outcomes().equity() - bestEquity, shown.get("cost").asDouble(), 1e-6);
        }
        assertEquals(2, json.get("match").get("mine").asInt());
        assertFalse(json.has("caution"));
    }

    /** With 2-1 in the exact table: bearing off leaves an opponent who doubles and is taken, another play one who cashes. */
    @Test
    void theLastRollsAreExact() throws IOException {
        JsonNode plays =
                json("rank 1@5 1@2 / 1@6 --roll 2-1 --cube 2 --owner me").get("plays");
        assertTrue(plays.get(0).get("cubefulExact").asBoolean());
        assertEquals(-0.5, plays.get(0).get("cubefulValue").asDouble(), 1e-6);
        assertEquals(-0.527778, plays.get(2).get("cubefulValue").asDouble(), 1e-6);
    }

    @Test
    void theTextShowsBothEquitiesAndCautionsOnceInMoneyPlay() {
        String money = run("rank start --roll 31 --cube 1 --top 2").out();
        assertTrue(money.contains("\nmoney play, Jacoby rule; cube at 1 in the centre\n"), money);
        assertTrue(money.contains("   play") && money.contains("cubeless"), money);
        assertEquals(1, money.lines().filter(row -> row.contains("local law")).count());
        String match =
                run("rank start --roll 31 --away 3,5 --plays 8/5,6/5;24/20").out();
        assertTrue(match.contains("\n2 of 16 legal plays, "), match);
        assertTrue(match.contains("match, %"), match);
        assertFalse(match.contains("local law"), match);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--cube 2|--cube is 2: say who owns it with --owner me or --owner them",
                "--crawford|--crawford is for matches: give the score with --away",
                "--away 3,26|the match table ends at 25-away, but the score is 3-away against 26-away: play a shorter match or"
                        + " give a longer table",
                "--cube 1 --lookahead 4|--lookahead is 4: with the cube use 0 to 3",
                "--cube 1 --seconds 1|--seconds leaves the cube out: give it without cube and score, or --lookahead with them",
                "--away 3,3 --rollout 36|--rollout leaves the cube out: give it without cube and score, or --lookahead with"
                        + " them",
            })
    void whatMakesNoSenseIsSaidInOneLine(String options, String message) {
        assertEquals(new Run(2, "", "pipwright: " + message + "\n"), run("rank start --roll 31 " + options));
    }
}
