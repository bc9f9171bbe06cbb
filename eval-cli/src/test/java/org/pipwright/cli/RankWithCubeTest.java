package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Listing;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;

/** Ranking with the cube, from the command line. */
class RankWithCubeTest {
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
    void jsonHasWhatTheJudgeSays(int lookahead) throws IOException {
        MatchStakes stakes = new MatchStakes(new MatchScore(2, 4, false));
        JsonNode json = json("rank start --roll 6-4 --away 2,4 --lookahead " + lookahead);
        List<PlayVerdict> expected;
        try (Judge judge = new Judge(Knowledge.of(TestNet.MODEL), 1)) {
            Question question = Question.of(Position.start(), Roll.of(6, 4)).with(stakes, CubeState.START);
            expected = Listing.byValue(
                    judge.ask(question, Effort.lookahead(lookahead)).plays(), Integer.MAX_VALUE, PlayVerdict::value);
        }
        assertEquals(expected.size(), json.get("plays").size());
        double bestEquity = expected.stream()
                .mapToDouble(play -> play.outcomes().equity())
                .max()
                .orElseThrow();
        for (int i = 0; i < expected.size(); i++) {
            PlayVerdict play = expected.get(i);
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

    /** The best few are played out as rollout does it; the others stay behind them, each with its own depth. */
    @ParameterizedTest
    @ValueSource(strings = {"--away 2,4", "--cube 2 --owner them"})
    void theBestArePlayedOut(String stakes) throws IOException {
        String asked = "1@bar 2@6 1@2 / 3@4 1@3 of 4 --roll 6-4 " + stakes;
        JsonNode json = json("rank " + asked + " --lookahead 1 --rollout 36");
        JsonNode plays = json.get("plays");
        int played = 0;
        for (JsonNode play : plays) {
            assertEquals(play.has("games"), play.has("standardError"));
            assertEquals(play.has("games"), play.has("chancesLookahead"));
            played += play.has("games") ? 1 : 0;
            assertEquals(play.get("place").asInt() <= played, play.has("games"), "those come first");
            assertTrue(play.get("cubefulCost").asDouble() <= 0);
        }
        assertTrue(played > 0, json.toString());
        assertEquals(36, plays.get(0).get("games").asInt());
        assertEquals(0, plays.get(0).get("lookahead").asInt(), "of the games' checker play");
        assertEquals(1, plays.get(0).get("chancesLookahead").asInt());
        JsonNode best = plays.get(0);
        Run rollout = run("rollout " + asked + " --json --trials 36 --plays "
                + best.get("playText").asText().replace(' ', ','));
        JsonNode value = new ObjectMapper()
                .readTree(rollout.out())
                .get("candidates")
                .get(0)
                .get("value");
        assertEquals(value.get("mean").asDouble(), best.get("cubefulValue").asDouble(), 1e-6);
        assertEquals(
                value.get("standardError").asDouble(), best.get("standardError").asDouble(), 1e-6);
        String line = "rank " + asked + " --lookahead 1 --rollout 36";
        assertEquals(run(line + " --threads 1"), run(line + " --threads 3"));
    }

    @Test
    void theTextSaysHowDeeplyEachLineWasEvaluated() {
        String position = "rank 1@bar 2@6 1@2 / 3@4 1@3 of 4 --roll 6-4 ";
        String money = run(position + "--cube 1 --rollout 36").out();
        assertTrue(money.contains("36 games at lookahead 0"), money);
        assertTrue(money.contains("   error"), money);
        assertTrue(money.contains("the cubeless figures are those of lookahead 0."), money);
        String ahead = run("rank start --roll 6-4 --away 3,5 --lookahead 1").out();
        assertTrue(ahead.contains(", lookahead 1 (weaker plays lookahead 0)\n"), ahead);
        assertTrue(ahead.contains("1 ahead") && ahead.contains("0 ahead"), ahead);
        assertFalse(ahead.contains("error") || ahead.contains("Games tell"), ahead);
    }

    /** As far as it can where the game is over after every play, and not at all in no time. */
    @ParameterizedTest
    @CsvSource({"1@3 14@off / 1@1 1@2 13@off --roll 2-1, 3600, 6", "start --roll 6-4, 0.000001, 0"})
    void itLooksAsFarAsTheTimeAllows(String asked, String seconds, int lookahead) throws IOException {
        JsonNode best = json("rank " + asked + " --cube 1 --seconds " + seconds)
                .get("plays")
                .get(0);
        assertEquals(lookahead, best.get("lookahead").asInt());
        assertFalse(best.has("games"));
    }

    /** Facts as without the cube, costs with it. */
    @Test
    void itExplains() throws IOException {
        String line = "rank start --roll 6-4 --away 2,1 --crawford --top 3 --explain";
        JsonNode json = json(line);
        JsonNode explained = json.get("explanation").get("plays");
        assertEquals(3, explained.size());
        String text = run(line).out();
        for (int i = 0; i < 3; i++) {
            JsonNode play = json.get("plays").get(i);
            assertEquals(play.get("playText"), explained.get(i).get("playText"));
            String cost = String.format(
                    Locale.ROOT, "%.2f", -100 * play.get("cubefulCost").asDouble());
            String heading = i == 0
                    ? "\nBest: " + play.get("playText").asText() + "\n"
                    : "\n" + play.get("playText").asText() + " gives away " + cost + " % of the match ("
                            + play.get("cubefulGrade").asText() + ")\n";
            assertTrue(text.contains(heading), heading + text);
        }
        assertTrue(text.contains("\nPoints that rolls cost or bring leave the cube out.\n"), text);
        String money = run("rank start --roll 6-4 --cube 1 --top 2 --explain").out();
        assertTrue(money.contains(" points with the cube ("), money);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--cube 2|--cube is 2: say who owns it with --owner me or --owner them",
                "--crawford|--crawford is for matches: give the score with --away",
                "--away 3,26|the match table ends at 25-away, but the score is 3-away against 26-away: play a shorter match or"
                        + " give a longer table",
                "--cube 1 --lookahead 7|--lookahead is 7: use 0 to 6",
                "--cube 1 --seconds 1 --lookahead 1|--seconds and --lookahead are two ways to say how far to look: give one of"
                        + " them",
                "--cube 1 --seconds 1 --plays 8/5,6/5|--seconds weighs all plays and drops the weak ones: give --lookahead with"
                        + " --plays",
                "--away 3,3 --rollout 0|--rollout: 0 trials: use 1 to 10000000",
            })
    void whatMakesNoSenseIsSaidInOneLine(String options, String message) {
        assertEquals(new Run(2, "", "pipwright: " + message + "\n"), run("rank start --roll 31 " + options));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--cube 1", "--away 3,3", ""})
    void theSearchIsToldOf(String options) {
        Run run = run(("rank start --roll 31 --lookahead 1 --stats " + options).strip());
        assertEquals(0, run.code());
        assertTrue(
                run.err().matches("[1-9][0-9,]* positions valued in [0-9.]+ s, .*% of look-ups found in memory\n"),
                run.err());
    }
}
