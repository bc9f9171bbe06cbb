package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;

class DuelCommandTest {
    private static final Entrant NET = Entrant.ofModel("net", TestNet.MODEL, 0);

    private static Tally duel(Entrant a, String baseline, DuelSettings settings) {
        return new Duel(a, Baselines.named(baseline).orElseThrow(), settings, soFar -> {}).run(1);
    }

    private static JsonNode json(String line) throws IOException {
        Run run = Run.of(line.replace("NET", TestNet.path()).split(" "));
        assertEquals("", run.err());
        assertEquals(0, run.code());
        assertEquals(List.of(), Schemas.faults("duel", run.out()));
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void theTextHasWhatTheDuelGives() {
        Tally tally = duel(Baselines.named("racer").orElseThrow(), "builder", DuelSettings.fullGames(100, 5));
        String text = String.format(
                "racer (formula) against builder (formula), 200 games in pairs, seed 5%n%n"
                        + "                 single  gammon  backgammon  together%n"
                        + "racer wins, %%    %6.1f  %6.1f  %10.1f  %8.1f%n"
                        + "builder wins, %%  %6.1f  %6.1f  %10.1f  %8.1f%n%n"
                        + "racer: %+.4f \u00b1 %.4f points per game%n",
                tally.aWins().single() / 2.0,
                tally.aWins().gammon() / 2.0,
                tally.aWins().backgammon() / 2.0,
                tally.aWins().total() / 2.0,
                tally.bWins().single() / 2.0,
                tally.bWins().gammon() / 2.0,
                tally.bWins().backgammon() / 2.0,
                tally.bWins().total() / 2.0,
                tally.values().mean(),
                tally.values().standardError());
        assertEquals(
                new Run(0, text.replace("\r\n", "\n"), ""),
                Run.of("duel", "racer", "builder", "--games", "200", "--seed", "5"));
    }

    /** By several threads more pairs than one of them takes at a time. */
    @ParameterizedTest
    @CsvSource({"1, 3", "3, 17"})
    void jsonHasWhatTheDuelGives(int threads, int pairs) throws IOException {
        JsonNode json = json("duel NET pips --games " + 2 * pairs + " --luck --json --threads " + threads);
        Tally tally = duel(NET, "pips", DuelSettings.fullGames(pairs, 1).withLuck());
        assertEquals(2 * pairs, json.get("games").asInt());
        assertEquals(tally.turns(), json.get("rolls").asInt());
        assertEquals(tally.values().mean(), json.get("value").get("mean").asDouble(), 1e-6);
        JsonNode adjusted = json.get("valueLessLuck");
        assertEquals(tally.adjusted().mean(), adjusted.get("mean").asDouble(), 1e-6);
        assertEquals(
                tally.adjusted().standardError(), adjusted.get("standardError").asDouble(), 1e-6);
        assertEquals(tally.varianceReduction(), json.get("varianceReduction").asDouble(), 1e-6);
        assertEquals(tally.bWins().gammon(), json.get("bWins").get("gammon").asInt());
        assertEquals(0, json.get("a").get("lookahead").asInt());
        assertTrue(json.get("b").get("lookahead") == null);
    }

    @Test
    void aDuelOnADeviceSaysHowItAgrees() throws IOException {
        String line = "duel NET pips --games 40 --threads 1".replace("NET", TestNet.path());
        Run onProcessor = Run.of(line.split(" "));
        Run onDevice = Run.of((line + " --device cuda").split(" "));
        assertEquals(
                new Run(
                        0,
                        onProcessor.out() + "\nplayed on a card, CUDA 13.0\n" + TestNet.path()
                                + ": 5 of 2000 decisions differ from the processor's (0.25 %), which costs 0.00125 points a"
                                + " decision\npips: answered for by the processor\n",
                        ""),
                onDevice);
        JsonNode device = json("duel NET pips --games 40 --threads 1 --json --device=cuda")
                .get("device");
        assertEquals("a card, CUDA 13.0", device.get("description").asText());
        assertEquals(5, device.get("a").get("differing").asInt());
        assertEquals(2000, device.get("a").get("compared").asInt());
        assertEquals(0.00125, device.get("a").get("cost").asDouble());
        assertEquals(false, device.get("b").get("onDevice").asBoolean());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--device abacus | there is no device 'abacus': use cpu or cuda",
                "--device cuda --lookahead 1 | --device cuda plays without the cube, without lookahead and without --luck",
                "--device cuda --money | --device cuda plays without the cube, without lookahead and without --luck",
                "--device cuda --luck | --device cuda plays without the cube, without lookahead and without --luck"
            })
    void aDeviceCannotDoEverything(String options, String expected) {
        Run run = Run.of(("duel fifth pips --games 2 " + options).split(" "));
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().startsWith("pipwright: " + expected), run.err());
        assertEquals(1, run.err().lines().count());
    }

    @Test
    void aLookaheadInTheNameIsNoneForADevice() {
        Run run = Run.of("duel", "fifth@1", "pips", "--games", "2", "--device", "cuda");
        assertEquals(
                new Run(
                        2,
                        "",
                        "pipwright: --device cuda plays without lookahead: leave it out of 'fifth@1', or leave out"
                                + " --device\n"),
                run);
    }

    @Test
    void untilSureStopsAndSaysWhy() throws IOException {
        JsonNode json = json("duel builder pips --until-sure --between 0,0.5 --json");
        assertEquals("high", json.get("sequentialTest").get("verdict").asText());
        assertEquals(1024, json.get("games").asInt());
        assertEquals(1_000_000, json.get("playedAtMost").asInt());
        Run text = Run.of("duel", "pips", "builder", "--until-sure", "--games", "2000");
        assertTrue(
                text.out()
                        .matches("(?s).*\nsure: [+]0\\.0000 rather than [+]0\\.0200 \\(log-likelihood ratio -[0-9.]+"
                                + " within -2\\.94 and [+]2\\.94\\)\n"),
                text.out());
    }

    @Test
    void tooFewGamesLeaveItOpen() {
        Run text = Run.of("duel", "racer", "hitter", "--until-sure", "--games", "200", "--error-rates", "0.01,0.2");
        assertTrue(text.out().contains("\nnot sure yet whether +0.0000 or +0.0200 ("), text.out());
        assertTrue(text.out().contains(" within -1.60 and +4.38)\n"), text.out());
    }

    @Test
    void lookaheadIsBySide() throws IOException {
        JsonNode json = json("duel NET NET --lookahead 1,0 --games 2 --json");
        assertEquals(1, json.get("a").get("lookahead").asInt());
        assertEquals(0, json.get("b").get("lookahead").asInt());
        JsonNode both = json("duel NET NET@0 --lookahead 1 --games 2 --json");
        assertEquals(json.get("value"), both.get("value"));
        assertEquals(json.get("rolls"), both.get("rolls"));
    }

    @Test
    void anUnknownPlayerIsToldWithWhatToUse() {
        Run run = Run.of("duel", "racer", "nobody");
        assertEquals(2, run.code());
        String known = "random, pips, racer, hitter, builder, waiter or the path of a \\.safetensors file\n";
        assertTrue(run.err().matches("pipwright: no player 'nobody': use (.*, )?" + known), run.err());
    }

    @Test
    void theSameNetTwiceIsToldApartByItsLookahead() {
        Run run = Run.of("duel", TestNet.path(), TestNet.path(), "--lookahead", "0,1", "--games", "2");
        assertTrue(run.out().contains("\n" + TestNet.path() + " (lookahead 0) wins, %  "), run.out());
        assertTrue(run.out().contains("\n" + TestNet.path() + " (lookahead 1) wins, %  "), run.out());
    }

    @Test
    void asciiHasNoPlusMinus() {
        Run run = Run.in(StandardCharsets.US_ASCII, "duel", "racer", "hitter", "--games", "4");
        assertTrue(run.out().contains(" +/- "), run.out());
    }
}
