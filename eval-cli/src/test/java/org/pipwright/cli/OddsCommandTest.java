package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

class OddsCommandTest {
    private static Outcomes expected(Position position) {
        return new NetworkEvaluator(TestNet.MODEL).evaluate(position);
    }

    @Test
    void theTableHasWhatTheNetSays() {
        Outcomes chances = expected(Position.start());
        String text = String.format(
                "%s  on roll%nnet %s, lookahead 0%n%n"
                        + "         single  gammon  backgammon  together%n"
                        + "win, %%   %6.1f  %6.1f  %10.1f  %8.1f%n"
                        + "lose, %%  %6.1f  %6.1f  %10.1f  %8.1f%n%n"
                        + "equity %+.4f points per game, with the cube left out%nchances estimated%n",
                Position.start(),
                TestNet.path(),
                100 * chances.winSingle(),
                100 * chances.winGammon(),
                100 * chances.winBackgammon(),
                100 * chances.win(),
                100 * chances.loseSingle(),
                100 * chances.loseGammon(),
                100 * chances.loseBackgammon(),
                100 - 100 * chances.win(),
                chances.equity());
        assertEquals(new Run(0, text.replace("\r\n", "\n"), ""), Run.of("odds", "start", "--net", TestNet.path()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"start", "1@bar 2@6 / 3@4 of 3", "off / 15@20", "2@24 13@4 / 3@5 12@2"})
    void jsonHasWhatTheNetSays(String text) throws IOException {
        Run run = Run.of("odds", "--json", text, "--net", TestNet.path());
        assertEquals("", run.err());
        assertEquals(List.of(), Schemas.faults("odds", run.out()));
        Outcomes chances = expected(PositionText.parse(text));
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertEquals(chances.equity(), json.get("equity").asDouble(), 1e-6);
        assertEquals(chances.win(), json.get("win").asDouble(), 1e-6);
        assertEquals(
                chances.winBackgammon(),
                json.get("chances").get("winBackgammon").asDouble(),
                1e-6);
        double sum = 0;
        for (JsonNode chance : json.get("chances")) {
            sum += chance.asDouble();
        }
        assertEquals(1, sum, 1e-5);
    }

    /** Between home and contact neither tables nor the net are asked. */
    @Test
    void longRacesAreSimulated() throws IOException {
        Position race = PositionText.parse("5@8 4@2 6@3 / 2@3 1@6");
        EndgameTables tables = EndgameTables.standard(TableFolder.ofUser(System.getenv()), 1, TableListener.SILENT);
        Outcomes simulated = RaceOutlook.of(race, tables).outcomes();
        for (String option : List.of("--json", "--json --lookahead 1")) {
            String line = "odds 5@8 4@2 6@3 / 2@3 1@6 --net " + TestNet.path() + " " + option;
            Run run = Run.of(line.split(" "));
            assertEquals(List.of(), Schemas.faults("odds", run.out()));
            JsonNode json = new ObjectMapper().readTree(run.out());
            assertEquals("estimated by simulation", json.get("basis").asText());
            assertEquals(simulated.equity(), json.get("equity").asDouble(), 1e-6);
        }
    }

    /** Of few checkers the distributions are known before they are home. */
    @Test
    void racesOfFewCheckersAreNotSimulated() {
        String race = " 2@7 2@10 / 3@9";
        for (String command : List.of(
                "odds" + race + " --net " + TestNet.path(),
                "cube" + race + " --net " + TestNet.path(),
                "count" + race)) {
            String text = Run.of(command.split(" ")).out();
            assertTrue(text.contains("from distributions"), text);
            assertTrue(!text.contains("simulat") && !text.contains("played out"), text);
        }
    }

    /** Where both sides have three checkers or fewer, chances are exact beyond the table; equities with a cube are not. */
    @Test
    void chancesOfTheLastThreeCheckersAreExactAnywhere() {
        String race = " 2@7 1@10 / 3@9";
        for (String command : List.of("odds" + race + " --net " + TestNet.path(), "count" + race)) {
            String text = Run.of(command.split(" ")).out();
            assertTrue(text.contains("exact") && !text.contains("from distributions"), text);
        }
        String cube =
                Run.of(("cube" + race + " --net " + TestNet.path()).split(" ")).out();
        assertTrue(cube.contains("from distributions") && !cube.contains("exact"), cube);
    }

    /** 27 of 36 throws bear off the last checker; else the opponent has the same chance. */
    @Test
    void theTablesComeFirst() throws IOException {
        String exact =
                Run.of("odds", "1@6 / 1@6", "--json", "--net", TestNet.path()).out();
        JsonNode json = new ObjectMapper().readTree(exact);
        assertEquals("exact", json.get("basis").asText());
        assertEquals(0.8125, json.get("win").asDouble(), 1e-6);
        String race = Run.of("odds", "15@6 / 15@6", "--net", TestNet.path()).out();
        assertTrue(race.endsWith("chances from distributions\n"), race);
        String plays = Run.of("rank", "1@6 1@5 / 1@6", "--roll", "2-1", "--net", TestNet.path())
                .out();
        assertTrue(plays.lines().skip(6).allMatch(line -> line.endsWith("  exact")), plays);
    }
}
