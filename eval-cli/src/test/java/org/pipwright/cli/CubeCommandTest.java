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
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;

class CubeCommandTest {
    private static Run run(String line) {
        return Run.of((line + " --net " + TestNet.path()).split(" "));
    }

    private static JsonNode json(String line) throws IOException {
        Run run = run(line + " --json");
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Schemas.faults("cube", run.out()));
        return new ObjectMapper().readTree(run.out());
    }

    /** The classical pair: with 5+2 one redoubles against a checker on the ace point, not against one on the 6 point. */
    @ParameterizedTest
    @CsvSource({"1, double, 0.055556, 0.111111", "5, roll, 0.186728, 0.111111", "6, roll, 0.291667, 0.111111"})
    void exactTablesDecideTheLastRolls(int opponent, String action, double roll, double take) throws IOException {
        JsonNode json = json("cube 1@5 1@2 / 1@" + opponent + " --cube 2 --owner me");
        assertTrue(json.get("exact").asBoolean());
        assertEquals(action, json.get("action").asText());
        assertEquals("take", json.get("answer").asText());
        assertEquals(roll, json.get("values").get("noDouble").asDouble(), 2e-6);
        assertEquals(take, json.get("values").get("doubleTake").asDouble(), 2e-6);
    }

    /** On a last roll a double is right from 50 % and a take from 25 %; a model's window would contradict exact values. */
    @Test
    void windowsBelongToTheRegimeOfThePosition() throws IOException {
        String last = run("cube 1@5 1@2 / 1@1").out();
        assertTrue(
                last.contains(
                        "\non the last rolls, take point 25.0 % (the opponent has 47.2 %); doubling window 50.0 to 75.0 %"
                                + " (the side on roll has 52.8 %); above 75.0 % the opponent passes\n"),
                last);
        JsonNode match = json("cube 1@5 1@2 / 1@1 --away 2,2");
        assertEquals(0.5, match.get("doublingWindow").get(0).asDouble(), 1e-6);
        // A pass leaves the chance of the Crawford game, 31.45 % by the shipped match table.
        assertEquals(0.3145, match.get("takePoint").asDouble(), 1e-6);
        JsonNode later = json("cube 1@5 1@2 / 1@6");
        assertFalse(later.has("takePoint") || later.has("doublingWindow"), later.toString());
        assertTrue(json("cube start").has("doublingWindow"));
    }

    @Test
    void whoWinsTheMatchAnywayGainsNothingByDoubling() throws IOException {
        JsonNode json = json("cube start --away 1,2");
        assertFalse(json.has("doublingWindow") || json.has("takePoint"), json.toString());
        assertTrue(
                json.get("verdict")
                        .asText()
                        .startsWith(
                                "No double: it gains nothing, since the side on roll wins the match with this game as"
                                        + " it is."),
                json.toString());
        assertFalse(run("cube start --away 1,2").out().contains("window"));
    }

    /** A match's last rolls are exact too; the values are those of a separate program. */
    @ParameterizedTest
    @CsvSource({
        "2@1 1@5 / 1@3 1@4, --away 2:1, double, -0.209877",
        "1@2 2@3 1@4 / 1@1 1@3 2@4, --away 3:3, double, -0.031852"
    })
    void theLastRollsOfAMatchAreExact(String position, String away, String action, double roll) throws IOException {
        JsonNode json = json("cube " + position + " " + away.replace(':', ','));
        assertTrue(json.get("exact").asBoolean());
        assertEquals(action, json.get("action").asText());
        assertEquals(roll, json.get("costs").get("roll").asDouble(), 2e-6);
    }

    @ParameterizedTest
    @ValueSource(strings = {"start", "5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar"})
    void moneyValuesAreThoseOfTheEngine(String text) throws IOException {
        CubeValues values = new CubeSearch(Judgement.by(new NetworkEvaluator(TestNet.MODEL)))
                .values(
                        PositionText.parse(text),
                        new CubeState(4, CubeOwner.ME),
                        new MoneyTerms(new MoneyStakes(true, true), null),
                        1);
        same(values, json("cube " + text + " --cube 4 --owner me --beavers"));
    }

    /** The cube is judged at the chances that odds and count give, not at the net's. */
    @Test
    void racesBeyondTheTablesArePlayedOut() throws IOException {
        // Not longer than it must be: each of the next two rolls is played out as well.
        String race = "1@7 5@6 5@4 4@2 / 2@7 5@5 4@4 4@3";
        JsonNode json = json("cube " + race + " --cube 4 --owner me");
        assertTrue(json.get("simulated").asBoolean());
        assertFalse(json.get("exact").asBoolean());
        assertEquals(0, json.get("lookahead").asInt());
        JsonNode odds = new ObjectMapper()
                .readTree(Run.of(("odds " + race + " --json").split(" ")).out());
        assertEquals(odds.get("chances"), json.get("chances"));
        Outcomes outcomes = outcomes(json.get("chances"));
        CubeTerms terms = new MoneyTerms(new MoneyStakes(true, false), null);
        // The chances are printed with six digits.
        same(terms.values(PositionText.parse(race), outcomes, new CubeState(4, CubeOwner.ME)), json, 1e-5);
        assertTrue(run("cube " + race).out().contains(", race played out many times\n"));
    }

    private static Outcomes outcomes(JsonNode chances) {
        double[] six = new double[Outcomes.COUNT];
        int at = 0;
        for (JsonNode chance : chances) {
            six[at++] = chance.asDouble();
        }
        return new Outcomes(six[0], six[1], six[2], six[3], six[4], six[5]);
    }

    @ParameterizedTest
    @CsvSource({"3, 5, false", "5, 1, false", "5, 1, true", "1, 1, false", "2, 2, false"})
    void matchValuesAreThoseOfTheEngine(int mine, int theirs, boolean crawford) throws IOException {
        MatchStakes stakes = new MatchStakes(new MatchScore(mine, theirs, crawford));
        CubeValues values = new CubeSearch(Judgement.by(new NetworkEvaluator(TestNet.MODEL)))
                .values(
                        PositionText.parse("start"),
                        CubeState.START,
                        new MatchTerms(stakes, ShippedMatchTable.load()),
                        0);
        same(values, json("cube start --lookahead 0 --away " + mine + "," + theirs + (crawford ? " --crawford" : "")));
    }

    private static void same(CubeValues values, JsonNode json) {
        same(values, json, 1e-6);
    }

    private static void same(CubeValues values, JsonNode json, double within) {
        JsonNode shown = json.get("values");
        assertEquals(values.noDouble(), shown.get("noDouble").asDouble(), within);
        assertEquals(values.mayDouble(), shown.has("doubleTake"));
        assertEquals(
                values.shouldDouble() ? "double" : "roll", json.get("action").asText());
        if (values.mayDouble()) {
            assertEquals(values.doubleTake(), shown.get("doubleTake").asDouble(), within);
            assertEquals(values.doublePass(), shown.get("doublePass").asDouble(), within);
            assertEquals(values.mayBeaver(), shown.has("doubleBeaver"));
        }
    }

    @Test
    void theTextSaysWhatTheJsonSaysAndCautionsOnce() throws IOException {
        String line = "cube 1@5 1@2 / 1@6 --cube 2 --owner me";
        String text = run(line).out();
        assertTrue(text.contains("\nroll                 +0.2917  roll     0.0000\n"), text);
        assertTrue(text.contains("\ndouble, take         +0.1111  take     0.0000\n"), text);
        assertTrue(text.contains("\ndouble, pass         +1.0000  pass    -0.8889\n"), text);
        assertEquals(-0.888889, json(line).at("/costs/pass").asDouble(), 2e-6);
        assertTrue(text.contains("\n" + json(line).get("verdict").asText() + "\n"), text);
        assertEquals(1, text.lines().filter(row -> row.contains("local law")).count());
        assertFalse(run("cube start --away 3,3").out().contains("local law"));
    }

    /** In the Crawford game at 2-away against 1-away a gammon is worth as much again as winning, by hand. */
    @Test
    void gammonValuesAreThoseOfTheScore() throws IOException {
        JsonNode values = json("cube start --away 2,1 --crawford --lookahead 0").get("gammonValues");
        assertEquals(1, values.get("mine").asDouble(), 1e-6);
        assertEquals(0, values.get("theirs").asDouble(), 1e-6);
        String text = run("cube start --away 2,1 --crawford --lookahead 0").out();
        assertTrue(
                text.contains("\ngammon value at this cube: 1.00 for the side on roll, 0.00 for the opponent"
                        + " (0.50 in money play)\n"),
                text);
    }

    static Stream<String> noDoubles() {
        return Stream.of("--cube 2 --owner them", "--away 1,4 --crawford");
    }

    @ParameterizedTest
    @org.junit.jupiter.params.provider.MethodSource("noDoubles")
    void whoMayNotDoubleIsTold(String options) throws IOException {
        JsonNode json = json("cube start " + options);
        assertEquals("roll", json.get("action").asText());
        assertFalse(json.has("answer") || json.has("marketLosers"));
        assertTrue(run("cube start " + options).out().contains("Nothing to decide"));
    }

    /** By a table of whole per cent a game at such scores changes nothing: all that is asked is answered all the same. */
    @ParameterizedTest
    @ValueSource(strings = {"6,1", "1,6", "5,2", "3,3"})
    void aTableThatRoundsDifferencesAwayIsAnswered(String away, @TempDir Path folder) throws IOException {
        Path table = Files.writeString(
                folder.resolve("table.csv"),
                "away,1,2,3,4,5,6\n1,.5,.7,.9,1,1,1\n2,.3,.5,.7,.9,1,1\n3,.1,.3,.5,.5,.7,.9\n4,0,.1,.5,.5,.5,.7\n"
                        + "5,0,0,.3,.5,.5,.6\n6,0,0,.1,.3,.4,.5\nafter crawford,.5,.5,.1,.1,0,0\n");
        String options = " --away " + away + " --table " + table;
        for (String line : List.of("cube start", "rank start --roll 3-1", "rank start --roll 3-1 --lookahead 1")) {
            Run text = run(line + options);
            assertEquals("", text.err());
            assertEquals(0, text.code());
            String json = run(line + options + " --json").out();
            assertEquals(List.of(), Schemas.faults(line.split(" ")[0], json));
        }
        String batch = "rank --batch -" + options + " --net " + TestNet.path();
        assertEquals(
                0, Run.withInput("start 3-1\nstart 6-4\n", batch.split(" ")).code());
    }

    @Test
    void anotherMatchTableCanBeUsed(@TempDir Path folder) throws IOException {
        Path table = Files.writeString(
                folder.resolve("table.csv"), "away,1,2\n1,0.5,0.9\n2,0.1,0.5\nafter crawford,0.5,0.5\n");
        JsonNode json = json("cube start --away 2,2 --table " + table);
        assertEquals(0.9, json.get("values").get("doublePass").asDouble(), 1e-9);
        Files.writeString(table, "away,1\n1,0.7\nafter crawford,0.5\n");
        Run run = run("cube start --away 1,1 --table " + table);
        assertEquals(2, run.code());
        assertTrue(run.err().matches("pipwright: the chances at 1-away [^\n]* add up to 1.4[^\n]*\n"), run.err());
    }
}
