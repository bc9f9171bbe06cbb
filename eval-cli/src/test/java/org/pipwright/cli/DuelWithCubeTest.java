package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.NetworkEvaluator;

/** Duels with the cube, from the command line. */
class DuelWithCubeTest {
    private static Tally duel(Contest contest, int pairs, boolean luck) {
        Supplier<PositionEvaluator> evaluators = () -> new NetworkEvaluator(TestNet.MODEL);
        Entrant a = Entrant.ofEvaluator("a", evaluators, 1);
        Entrant b = Entrant.ofEvaluator("b", evaluators, 0);
        return new Duel(a, b, new DuelSettings(contest, pairs, 1, luck, Optional.empty()), soFar -> {}).run(2);
    }

    private static Run run(String line) {
        return Run.of(line.replace("NET", TestNet.path()).split(" "));
    }

    @Test
    void theTextHasWhatTheDuelGives() {
        Tally tally = duel(new Contest.Money(MoneyStakes.USUAL), 2, false);
        Run run = run("duel NET NET --lookahead 1,0 --money --games 4");
        assertEquals("", run.err());
        String head = TestNet.path() + " (lookahead 1) against " + TestNet.path()
                + " (lookahead 0), 4 games of money play, Jacoby rule in pairs, seed 1\n\n";
        assertTrue(run.out().startsWith(head), run.out());
        String result = String.format(
                "lookahead 1): %+.4f \u00b1 %.4f points per game\n",
                tally.values().mean(), tally.values().standardError());
        assertTrue(run.out().contains(result), run.out());
        String cube = String.format(
                "%ncube: turned or passed in %.1f %% of 4 games; at their end it showed %.2f on average, %d at most%n",
                tally.cube().doubled() * 25.0,
                tally.cube().cubes() / 4.0,
                tally.cube().highest());
        assertTrue(run.out().contains(cube.replace("\r", "")), run.out());
        assertTrue(run.out().endsWith("whether that is allowed is a matter of local law.\n"), run.out());
    }

    @ParameterizedTest
    @CsvSource({"1", "3"})
    void jsonOfMatchesHasWhatTheDuelGives(int threads) throws IOException {
        Tally tally = duel(new Contest.Match(2, ShippedMatchTable.load()), 2, true);
        Run run = run("duel NET NET --lookahead 1,0 --match 2 --games 4 --luck --json --threads " + threads);
        assertEquals("", run.err());
        assertEquals(List.of(), Schemas.faults("duel", run.out()));
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertEquals(2, json.get("matchLength").asInt());
        assertEquals(4, json.get("played").asInt());
        assertEquals(tally.games(), json.get("games").asInt());
        assertEquals(tally.turns(), json.get("rolls").asInt());
        assertEquals(tally.values().mean(), json.get("value").get("mean").asDouble(), 1e-6);
        assertEquals(
                tally.adjusted().mean(), json.get("valueLessLuck").get("mean").asDouble(), 1e-6);
        assertEquals(tally.bWins().passes(), json.get("bWins").get("passed").asInt());
        assertEquals(
                tally.cube().doubled(), json.get("cube").get("doubledGames").asInt());
    }

    @Test
    void jsonOfMoneyKeepsToTheSchema() {
        Run run = run("duel NET NET --money --no-jacoby --beavers --games 2 --json");
        assertEquals(List.of(), Schemas.faults("duel", run.out()));
        assertTrue(run.out().contains("\"jacoby\" : false"), run.out());
    }

    @Test
    void matchesAreTestedOnTheShareWon() {
        Run run = run("duel NET NET --match 1 --until-sure --games 2000 --between 0.5,0.6");
        assertTrue(run.out().contains("\nsure: +0.5000 rather than +0.6000 ("), run.out());
        assertTrue(run.out().contains(": 50.00 \u00b1 0.00 % of the matches\n"), run.out());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "NET pips --money|pips is a formula and cannot judge the cube: let nets play with it",
                "NET NET --money --match 3|--money and --match are two kinds of duel: give one of them",
                "NET NET --beavers|--beavers needs --money",
                "NET NET --match 3 --no-jacoby|--no-jacoby needs --money",
                "NET NET --money --table x|--table needs --match",
                "NET NET --match 30|--match: a match goes to 1 to 25 points, where the match table ends, not to 30: play a"
                        + " shorter match or give a longer table",
                "NET NET --match 0|--match: a match goes to 1 to 25 points, where the match table ends, not to 0: play a"
                        + " shorter match or give a longer table",
                "NET NET --money --lookahead 7|a lookahead of 7: use 0 to 6",
            })
    void whatMakesNoSenseIsSaidInOneLine(String arguments, String message) {
        assertEquals(new Run(2, "", "pipwright: " + message + "\n"), run("duel " + arguments));
    }
}
