package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

class RankCommandTest {
    private static Run rank(String... args) {
        List<String> all = new ArrayList<>(List.of("rank"));
        all.addAll(List.of(args));
        all.addAll(List.of("--net", TestNet.path()));
        Run run = Run.of(all.toArray(String[]::new));
        assertEquals("", run.err());
        assertEquals(0, run.code());
        return run;
    }

    private static List<PlayVerdict> expected(Position position, Roll roll) {
        return new PlayRanker(new NetworkEvaluator(TestNet.MODEL)).rank(position, roll);
    }

    @Test
    void aTableLooksSo() throws IOException {
        String table = rank("start", "--roll", "3-1", "--top", "3").out().replace(TestNet.path(), "NET");
        try (var in = getClass().getResourceAsStream("rank.txt")) {
            assertEquals(new String(in.readAllBytes(), StandardCharsets.UTF_8), table);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"1-1", "31", "6-5"})
    void theTableHasWhatTheRankerSays(String roll) {
        List<PlayVerdict> plays = expected(Position.start(), Roll.parse(roll));
        List<String> lines = rank("start", "--roll", roll).out().lines().skip(5).toList();
        assertEquals(plays.size(), lines.size());
        for (int i = 0; i < lines.size(); i++) {
            PlayVerdict play = plays.get(i);
            String line = lines.get(i);
            Outcomes chances = play.outcomes();
            String numbers = String.format(
                    "%+.4f %s %s %.1f %.1f %.1f %.1f %.1f %.1f",
                    play.equity(),
                    play.cost() == 0 ? "0.0000" : String.format("%+.4f", play.cost()),
                    play.grade().word(),
                    100 * chances.winSingle(),
                    100 * chances.winGammon(),
                    100 * chances.winBackgammon(),
                    100 * chances.loseSingle(),
                    100 * chances.loseGammon(),
                    100 * chances.loseBackgammon());
            assertEquals(
                    (i + 1) + " " + play.play() + " " + numbers, line.strip().replaceAll("\\s+", " "));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"start", "1@bar 2@6 / 2@4 1@18 of 3", "1@1 / 1@1", "1@bar 14@1 / 2@1 2@2 2@3 2@4 2@5 5@6"})
    void jsonHasWhatTheRankerSays(String text) throws IOException {
        Run run = rank("--json", "--roll", "6-4", text);
        assertEquals(List.of(), Schemas.faults("rank", run.out()));
        JsonNode json = new ObjectMapper().readTree(run.out());
        Position position = PositionJson.parse(json.get("position").toString());
        assertEquals(position.toString(), json.get("positionText").asText());
        List<PlayVerdict> plays = expected(position, Roll.of(6, 4));
        assertEquals(plays.size(), json.get("legalPlays").asInt());
        assertEquals(plays.size(), json.get("rankedPlays").asInt());
        assertEquals(plays.size(), json.get("plays").size());
        for (int i = 0; i < plays.size(); i++) {
            JsonNode play = json.get("plays").get(i);
            assertEquals(i + 1, play.get("place").asInt());
            assertEquals(plays.get(i).play().toString(), play.get("playText").asText());
            assertEquals(plays.get(i).equity(), play.get("equity").asDouble(), 1e-6);
            assertEquals(plays.get(i).cost(), play.get("cost").asDouble(), 1e-6);
            assertEquals(plays.get(i).grade().word(), play.get("grade").asText());
            assertEquals(
                    plays.get(i).outcomes().loseGammon(),
                    play.get("chances").get("loseGammon").asDouble(),
                    1e-6);
        }
    }

    @Test
    void onlyTheGivenPlaysAreRankedHoweverTheyAreGiven() {
        String together =
                rank("start", "--roll", "31", "--plays", "6/5 8/5; 24/23 13/10").out();
        assertEquals(
                together,
                rank("start", "--roll", "31", "--plays", "24/23,13/10", "--plays", "8/5,6/5")
                        .out());
        assertTrue(together.contains("\n2 of 16 legal plays, net "), together);
        boolean best = together.lines().anyMatch(line -> line.startsWith("best of all: "));
        assertEquals(best ? 9 : 7, together.lines().count());
    }

    /** Costs are against the best legal play even where it is not asked about; it is named then. */
    @Test
    void aWeakPlayByItselfIsNotFine() throws IOException {
        List<PlayVerdict> all = expected(Position.start(), Roll.of(3, 1));
        PlayVerdict best = all.get(0);
        PlayVerdict last = all.get(all.size() - 1);
        Run run = rank("start", "3-1", "--plays", last.play().toString());
        assertTrue(
                run.out()
                        .contains("\nbest of all: " + best.play() + "  " + String.format("%+.4f", best.equity())
                                + "; costs are against it\n"),
                run.out());
        assertTrue(
                run.out()
                        .contains(String.format(
                                "%+.4f  %s", last.cost(), last.grade().word())),
                run.out());
        assertTrue(run.out().contains("\n1 of 16 legal plays, net "), run.out());
        Run json = rank("start", "3-1", "--json", "--plays", last.play().toString());
        assertEquals(List.of(), Schemas.faults("rank", json.out()));
        JsonNode tree = new ObjectMapper().readTree(json.out());
        assertEquals(best.play().toString(), tree.get("best").get("playText").asText());
        assertEquals(best.equity(), tree.get("best").get("equity").asDouble(), 1e-6);
        assertEquals(1, tree.get("plays").size());
        assertEquals(last.cost(), tree.get("plays").get(0).get("cost").asDouble(), 1e-6);
    }

    @Test
    void theRollMayStandBehindThePosition() {
        String once = rank("start", "--roll", "3-1").out();
        assertEquals(once, rank("start", "3-1").out());
        assertEquals(once, rank("start 31").out());
        assertEquals(
                rank("1@24 1@23 / 1@24 1@23 of 2", "--roll", "62").out(),
                rank("1@24", "1@23", "/", "1@24", "1@23", "of", "2", "62").out());
        Run twice = Run.of("rank", "start", "3-1", "--roll", "3-1");
        assertEquals(2, twice.code());
        assertTrue(twice.err().contains("3-1 follows the position, but --roll gives a roll too"), twice.err());
    }

    @Test
    void turnsArePlayedOnFirst() {
        Position after =
                PlayText.parse("8/5 6/5", Position.start(), Roll.of(3, 1)).next();
        String expected = rank(after.toString(), "--roll", "6-2").out();
        assertEquals(expected, rank("start", "6-2", "--play-on", "3-1: 8/5 6/5").out());
        Position later = PlayText.parse("24/18 13/11", after, Roll.of(6, 2)).next();
        expected = rank(later.toString(), "--roll", "4-4").out();
        assertEquals(
                expected,
                rank("start", "44", "--play-on", "31: 8/5 6/5; 62 24/18 13/11").out());
        for (String wrong : List.of("8/5 6/5", "3-1", "3-1: 8/4 6/5", "3-1: 8/5 6/5;")) {
            Run run = Run.of("rank", "start", "6-2", "--play-on", wrong);
            assertEquals(2, run.code(), wrong);
            assertEquals(1, run.err().lines().count(), run.err());
        }
    }

    /** A typing slip leaves a checker out; one hit while its side bore off is nothing to ask about. */
    @Test
    void missingCheckersAreAskedAbout() {
        Run odd = Run.of("odds", "5@6 3@8 4@13 2@24 / 5@6 3@8 5@13 2@24", "--net", TestNet.path());
        assertEquals(0, odd.code());
        assertEquals(
                "the side on roll has 14 checkers, so 1 counts as borne off, yet 9 are not home: was one left out?\n",
                odd.err());
        assertEquals(
                "side on roll: 14 checkers, 1 off; opponent: 15 checkers, 0 off",
                odd.out().lines().skip(1).findFirst().orElseThrow());
        for (String usual : List.of(
                "start", "1@bar 3@1 3@2 2@3 / 2@4 2@5 5@6 4@8 2@3", "5@1 4@2 / 3@3 1@6", "2@6 1@bar / 3@4 2@20 of 5")) {
            assertEquals("", Run.of("odds", usual, "--net", TestNet.path()).err(), usual);
        }
    }

    @Test
    void topShowsTheBest() throws IOException {
        Run run = rank("start", "--roll", "31", "--top", "2", "--json");
        assertEquals(List.of(), Schemas.faults("rank", run.out()));
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertEquals(2, json.get("plays").size());
        assertEquals(16, json.get("rankedPlays").asInt());
        assertEquals(
                rank("start", "--roll", "31").out().lines().count(),
                rank("start", "--roll", "31", "--top", "99").out().lines().count());
    }

    @Test
    void aPositionCanBeGivenInManyWays() {
        String once = rank("1@bar 2@6 / 3@4 of 3", "--roll", "64").out();
        assertEquals(
                once,
                rank("--roll", "64", "2@6", "1@BAR", "/", "3@4", "of", "3").out());
        assertEquals(once, rank("2@6,1@bar/3@4 of 3", "--roll=6-4").out());
        String json = "{\"checkers\":3,\"me\":{\"points\":{\"6\":2},\"bar\":1},\n \"opponent\":{\"points\":{\"4\":3}}}";
        assertEquals(once, rank(json, "--roll", "6-4").out());
        for (String input : List.of(json, "1@bar 2@6 / 3@4 of 3\n", "\n2@6 1@bar / 3@4 of 3")) {
            assertEquals(
                    new Run(0, once, ""), Run.withInput(input, "rank", "-", "--roll", "64", "--net", TestNet.path()));
        }
    }

    @Test
    void standardInputHoldsOnePosition() {
        Run run = Run.withInput("start\nstart\n", "rank", "-", "--roll", "64", "--net", TestNet.path());
        assertEquals(new Run(2, "", "pipwright: standard input has 2 lines: write one position to it\n"), run);
        assertEquals(
                2,
                Run.withInput("{" + " ".repeat(20_000), "rank", "-", "--roll", "64")
                        .code());
    }

    /** Each play by itself, with the same chances as the position it leads to has; some lead to where the tables are. */
    @Test
    void playsOfLongRacesAreSimulated() throws IOException {
        String from = "9@3 5@6 1@8 / 10@4 5@7";
        Run run = Run.of("rank", from, "--roll", "6-2", "--json", "--net", TestNet.path());
        assertEquals(List.of(), Schemas.faults("rank", run.out()));
        EndgameTables tables = EndgameTables.standard(TableFolder.ofUser(System.getenv()), 1, TableListener.SILENT);
        double before = Double.POSITIVE_INFINITY;
        for (JsonNode shown : new ObjectMapper().readTree(run.out()).get("plays")) {
            Position next = PlayText.parse(shown.get("playText").asText(), PositionText.parse(from), Roll.of(6, 2))
                    .next();
            assertEquals("estimated by simulation", shown.get("basis").asText());
            double equity = -RaceOutlook.of(next, tables).outcomes().equity();
            assertEquals(equity, shown.get("equity").asDouble(), 1e-6);
            assertTrue(equity <= before + 1e-6, "best first");
            before = equity;
        }
    }
}
