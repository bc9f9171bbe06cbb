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
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.Judgement;

/** Games are truncated after three rolls: what commands print is tested here, not the play of a net that knows nothing. */
class RolloutCommandTest {
    /** Else the first test that needs the tables would find them announced on standard error. */
    @BeforeAll
    static void buildTables() {
        assertEquals(0, Run.of("tables").code());
    }

    private static final RolloutSettings SETTINGS =
            RolloutSettings.DEFAULT.withTrials(72).withTruncation(3);

    private static Run rollout(String... args) {
        List<String> all = new ArrayList<>(List.of("rollout", "start", "--truncate", "3", "--net", TestNet.path()));
        all.addAll(Arrays.asList(args));
        return Run.of(all.toArray(String[]::new));
    }

    private static String out(String... args) {
        Run run = rollout(args);
        assertEquals("", run.err().replaceAll("\\d+ of \\d+ games: [^\n]*\n", ""), "nothing but progress");
        assertEquals(0, run.code());
        return run.out();
    }

    @Test
    void aTableLooksSo() throws IOException {
        String table = out("--roll", "3-1", "--plays", "8/5 6/5; 24/23 13/10", "--trials", "72", "--until-sure", "3")
                .replace(TestNet.path(), "NET");
        try (var in = getClass().getResourceAsStream("rollout.txt")) {
            assertEquals(new String(in.readAllBytes(), StandardCharsets.UTF_8), table);
        }
    }

    /** Far from all the games asked for; and what was printed is a rollout of just those. */
    @Test
    void itStopsWhenItIsSure() {
        String plays = "8/5 6/5; 24/23 13/10";
        String out = out("--roll", "3-1", "--plays", plays, "--trials", "100000", "--until-sure", "6");
        int games = Integer.parseInt(out.replaceAll("(?s).*?(\\d+) games.*", "$1"));
        assertTrue(games % 36 == 0 && games < 10_000, games + " games");
        assertTrue(out.contains("\nthe best play is clear: at this look that takes "), out);
        assertEquals(
                out, out("--roll", "3-1", "--plays", plays, "--trials", Integer.toString(games), "--until-sure", "6"));
        String few = out("--roll", "3-1", "--plays", "13/9; 13/10 24/23", "--trials", "36", "--until-sure", "6");
        assertTrue(few.contains(" 36 games each") && few.contains("\nthe best play is not yet clear: "), few);
    }

    @Test
    void jsonHasWhatTheLibrarySays() throws IOException {
        String text = out("--roll", "3-1", "--plays", "8/5 6/5; 24/23 13/10", "--trials", "72", "--json");
        assertEquals(List.of(), Schemas.faults("rollout", text));
        JsonNode json = new ObjectMapper().readTree(text);
        Roll roll = Roll.of(3, 1);
        List<Play> plays = List.of(
                PlayText.parse("8/5 6/5", Position.start(), roll),
                PlayText.parse("24/23 13/10", Position.start(), roll));
        try (Rollouts rollouts = new Rollouts(() -> Judgement.by(new NetworkEvaluator(TestNet.MODEL)), SETTINGS, 1)) {
            RolloutReport report = rollouts.compare(Position.start(), roll, plays, RolloutListener.NONE);
            assertEquals(72, json.get("games").asInt());
            for (int i = 0; i < 2; i++) {
                RolloutLine line = report.lines().get(i);
                JsonNode shown = json.get("candidates").get(i);
                assertEquals(
                        plays.get(line.candidate()).toString(),
                        shown.get("playText").asText());
                assertEquals(line.value().mean(), shown.get("value").get("mean").asDouble(), 1e-6);
                assertEquals(
                        line.behind().standardError(),
                        shown.get("cost").get("standardError").asDouble(),
                        1e-6);
                assertEquals(
                        line.chances().get(4).mean(),
                        shown.get("chances").get("loseGammon").get("mean").asDouble(),
                        1e-6);
            }
        }
    }

    @Test
    void withoutARollTheChancesBeforeIt() throws IOException {
        String text = out("--trials", "36", "--json", "--no-luck");
        assertEquals(List.of(), Schemas.faults("rollout", text));
        JsonNode json = new ObjectMapper().readTree(text);
        assertEquals(1, json.get("candidates").size());
        assertEquals(1, json.get("candidates").get(0).get("varianceReduction").asDouble(), "nothing was taken off");
        assertTrue(out("--trials", "36").contains("before the roll"));
    }

    @Test
    void threadsChangeNothing() {
        assertEquals(out("--trials", "36", "--threads", "1"), out("--trials", "36", "--threads", "3"));
    }

    @Test
    void savedAndResumedIsTheSameAsInOneGo(@TempDir Path folder) throws IOException {
        String file = folder.resolve("a.rollout").toString();
        out("--trials", "36", "--save", file);
        assertEquals(out("--trials", "108"), out("--trials", "108", "--resume", file));
        Run other = rollout("--trials", "108", "--seed", "2", "--resume", file);
        assertEquals(2, other.code());
        assertTrue(other.err().contains("'seed 1' where 'seed 2' is asked for"), other.err());
        Files.writeString(Path.of(file), "something else");
        assertEquals(2, rollout("--resume", file).code());
    }

    @Test
    void rankCarriesHowDeeplyEachPlayWasValued() throws IOException {
        Run run = Run.of(
                "rank",
                "1@bar 2@6 / 3@4 of 3",
                "--roll",
                "64",
                "--rollout",
                "36",
                "--lookahead",
                "1",
                "--json",
                "--net",
                TestNet.path());
        assertEquals("", run.err());
        assertEquals(List.of(), Schemas.faults("rank", run.out()));
        JsonNode plays = new ObjectMapper().readTree(run.out()).get("plays");
        assertEquals(36, plays.get(0).get("games").asInt());
        assertTrue(plays.get(0).get("standardError").asDouble() >= 0);
    }

    @Test
    void rankLooksAheadAndSaysSo() throws IOException {
        Run run = Run.of("rank", "start", "--roll", "64", "--lookahead", "1", "--json", "--net", TestNet.path());
        assertEquals(List.of(), Schemas.faults("rank", run.out()));
        JsonNode plays = new ObjectMapper().readTree(run.out()).get("plays");
        assertEquals(1, plays.get(0).get("lookahead").asInt());
        List<Integer> depths = new ArrayList<>();
        for (int i = 1; i < plays.size(); i++) {
            depths.add(plays.get(i).get("lookahead").asInt());
            assertTrue(i == 1
                    || plays.get(i).get("equity").asDouble()
                            <= plays.get(i - 1).get("equity").asDouble());
        }
        assertTrue(depths.contains(0) && depths.contains(1), depths::toString);
        String text = Run.of("rank", "start", "--roll", "64", "--lookahead", "1", "--net", TestNet.path())
                .out();
        assertTrue(text.contains("lookahead 1 (weaker plays lookahead 0)"), text);
        assertTrue(text.contains("1 ahead") && text.contains("0 ahead"), text);
    }

    @Test
    void oddsLookAheadOrPlayOutAndSaySo() throws IOException {
        String position = "2@6 1@23 / 3@4 of 3";
        String ahead = Run.of("odds", position, "--lookahead", "2", "--net", TestNet.path())
                .out();
        assertTrue(ahead.contains(", lookahead 2\n"), ahead);
        Run played = Run.of("odds", position, "--rollout", "36", "--json", "--net", TestNet.path());
        assertEquals(List.of(), Schemas.faults("odds", played.out()));
        assertEquals(36, new ObjectMapper().readTree(played.out()).get("games").asInt());
        Run timed = Run.of("odds", position, "--seconds", "0.2", "--stats", "--net", TestNet.path());
        assertTrue(timed.err().matches("[0-9,]+ positions valued in [^\n]* found in memory\n"), timed.err());
    }
}
