package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.rollout.Start;
import org.pipwright.engine.search.Judgement;

/** Rollouts with the cube, from the command line. */
class RolloutWithCubeTest {
    private static Run run(String line) {
        return Run.of((line + " --net " + TestNet.path()).split(" "));
    }

    private static JsonNode json(String line) throws IOException {
        Run run = run(line + " --json");
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Schemas.faults("rollout", run.out()));
        return new ObjectMapper().readTree(run.out());
    }

    /** The classical last rolls: exact with and without doubling, after any number of games. */
    @ParameterizedTest
    @CsvSource({"1, 0.055556, Double: the opponent should take.", "6, 0.291667, No redouble yet: roll."})
    void theLastRollsAreExact(int opponent, double roll, String verdict) throws IOException {
        JsonNode json = json("rollout 1@5 1@2 / 1@" + opponent + " --cube 2 --owner me --trials 36");
        assertEquals(roll, json.get("values").get("noDouble").asDouble(), 2e-6);
        assertEquals(0.111111, json.get("values").get("doubleTake").asDouble(), 2e-6);
        assertEquals(1, json.get("values").get("doublePass").asDouble(), 1e-9);
        assertTrue(json.get("verdict").asText().startsWith(verdict), json.toString());
        assertTrue(json.has("caution"));
    }

    /** Where passing is right, rolling costs what it gives less than the pass; the values are those of separate programs. */
    @ParameterizedTest
    @CsvSource({"4@1 3@2 1@3 / 3@3 4@2 1@4, -0.0788, Double: ", "5@1 2@2 1@3 / 3@5 4@6 1@4, 0, Rolling and doubling are"
    })
    void costsWherePassingIsRight(String position, double roll, String verdict) throws IOException {
        JsonNode json = json("rollout " + position + " --cube 1 --trials 360");
        assertEquals(roll, json.get("costs").get("roll").asDouble(), 0.02, json.toString());
        assertTrue(json.get("verdict").asText().startsWith(verdict), json.toString());
        for (JsonNode candidate : json.get("candidates")) {
            boolean rolling = candidate.get("action").asText().equals("no double");
            assertEquals(
                    json.get("costs").get(rolling ? "roll" : "take").asDouble(),
                    candidate.get("cost").get("mean").asDouble(),
                    1e-6);
        }
        assertEquals(2, json.get("choices").size());
    }

    @Test
    void jsonHasWhatTheEngineSays() throws IOException {
        JsonNode json = json("rollout start --cube 1 --trials 36 --truncate 4 --seed 3");
        MoneyTerms terms = new MoneyTerms(MoneyStakes.USUAL, null);
        RolloutReport expected;
        try (Rollouts rollouts = new Rollouts(
                () -> Judgement.by(new NetworkEvaluator(TestNet.MODEL)),
                () -> stakes -> terms,
                RolloutSettings.DEFAULT.withTrials(36).withTruncation(4).withSeed(3),
                1)) {
            expected = rollouts.compare(
                    List.of(
                            Start.rolling(Position.start(), CubeState.START),
                            Start.rolling(Position.start(), CubeState.START.taken())),
                    MoneyStakes.USUAL,
                    1,
                    WorkFile.NONE,
                    RolloutListener.NONE);
        }
        assertEquals(36, json.get("games").asInt());
        for (int i = 0; i < 2; i++) {
            JsonNode shown = json.get("candidates").get(i);
            assertEquals(
                    expected.lines().get(i).candidate() == 0 ? "no double" : "double, take",
                    shown.get("action").asText());
            assertEquals(
                    expected.lines().get(i).value().mean(),
                    shown.get("value").get("mean").asDouble(),
                    1e-6);
            assertEquals(
                    expected.lines().get(i).value().standardError(),
                    shown.get("value").get("standardError").asDouble(),
                    1e-6);
            assertEquals(
                    expected.lines().get(i).cube().orElseThrow().doubled(),
                    shown.get("doubled").asDouble(),
                    1e-6);
        }
    }

    @Test
    void playsAreComparedAtAScore() throws IOException {
        String line = "rollout start --roll 6-4 --away 2,1 --crawford --trials 36 --truncate 2 --plays 8/2,6/2;24/14";
        JsonNode json = json(line);
        assertEquals(2, json.get("candidates").size());
        assertEquals(14, json.get("legalPlays").asInt());
        assertFalse(json.has("values") || json.has("caution"));
        String text = run(line).out();
        assertTrue(text.contains("\nmatch, 2-away against 1-away, Crawford game; cube at 1 in the centre\n"), text);
        assertTrue(text.contains("\n2 of 14 legal plays, net "), text);
        assertFalse(text.contains("local law"), text);
    }

    @Test
    void theTextHasVerdictAndCaution() {
        String text = run("rollout 1@5 1@2 / 1@6 --cube 2 --owner me --trials 36 --beavers")
                .out();
        assertTrue(text.contains("\nno double         +0.2917   0.0000"), text);
        assertTrue(text.contains("\ndouble, beaver"), text);
        assertTrue(text.contains("\ndouble, pass: +1.0000, cost -0.8889\nNo redouble yet: roll. If doubled, "), text);
        assertEquals(1, text.lines().filter(row -> row.contains("local law")).count());
    }

    @Test
    void whoMayNotDoubleRollsOnly() throws IOException {
        JsonNode json = json("rollout 1@5 1@2 / 1@6 --cube 2 --owner them --trials 36");
        assertEquals(1, json.get("candidates").size());
        assertEquals(
                "Nothing to decide: only the opponent may double.",
                json.get("verdict").asText());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--cube 1", "--cube 1 --roll 31 --top 2", "--away 5,3 --cube 2 --owner them"})
    void savedAndResumedIsTheSameAsInOneGo(String asked, @TempDir Path folder) {
        String line = "rollout start --truncate 3 " + asked;
        String kept = " --resume " + folder.resolve("a.rollout");
        assertEquals(
                0,
                run(line + " --trials 36 --threads 1 --save " + folder.resolve("a.rollout"))
                        .code());
        Run whole = run(line + " --trials 108 --threads 1 --json");
        assertEquals(whole, run(line + " --trials 108 --threads 2 --json" + kept));
        assertEquals(whole, run(line + " --trials 108 --json" + kept), "nothing is left to play");
    }

    @Test
    void aFileOfAnotherRolloutIsRefusedInOneLine(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("a.rollout");
        String line = "rollout start --truncate 3 --trials 36 --away 5,3";
        assertEquals(0, run(line + " --save " + file).code());
        String resumed = line + " --resume " + file;
        assertRefused(resumed + " --seed 2", file, "'seed 1' where 'seed 2' is asked for");
        assertRefused(resumed.replace("5,3", "3,5"), file, "'match 5,3, crawford false' where 'match 3,5, ");
        assertRefused("rollout start --truncate 3 --resume " + file, file, "'table shipped' where ");
        Path table = Files.write(
                folder.resolve("table.csv"),
                Files.readAllBytes(Path.of("../engine/src/main/resources" + ShippedMatchTable.RESOURCE)));
        assertRefused(resumed + " --table " + table, file, "'table shipped' where 'table ");
        Files.writeString(file, Files.readString(file).replace("trials 36", "trials 72"));
        assertRefused(resumed, file, "its checksum is wrong");
    }

    private static void assertRefused(String line, Path file, String why) {
        Run run = run(line);
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(
                run.err().startsWith("pipwright: '" + file + "' ") && run.err().contains(why), run.err());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--cube 1 --save x --resume pom.xml|--save begins a file anew and --resume goes on with one: give one of them",
                "--cube 1 --lookahead 7|lookahead 7: use 0 to 6",
                "--away 26,3|the match table ends at 25-away, but the score is 26-away against 3-away: play a shorter match or"
                        + " give a longer table",
                "--cube 1 --roll 31 --top 0|--top is 0: compare at least 1 play",
            })
    void whatMakesNoSenseIsSaidInOneLine(String options, String message) {
        assertEquals(new Run(2, "", "pipwright: " + message + "\n"), run("rollout start " + options));
    }
}
