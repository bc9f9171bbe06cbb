package org.pipwright.bench.start;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.cli.Main;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

class StartTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");

    private static String printed(String... args) throws IOException {
        StringWriter out = new StringWriter();
        List<String> words = new ArrayList<>(List.of(args));
        words.add(0, "start");
        assertEquals(
                0, Main.run(new PrintWriter(out), new PrintWriter(System.err, true), words.toArray(String[]::new)));
        return out.toString();
    }

    @Test
    void firstRollsAreAveragedAsTheySay() {
        List<StartOdds> odds;
        try (Judge judge = new Judge(Knowledge.of(MODEL), 1)) {
            odds = StartOdds.of(judge);
        }
        PlayRanker ranker = new PlayRanker(new NetworkEvaluator(MODEL));
        double openings = 0;
        double any = 0;
        for (Roll roll : Roll.all()) {
            double best = ranker.rank(Position.start(), roll).get(0).equity();
            openings += roll.isDouble() ? 0 : best / 15;
            any += roll.ways() * best / 36;
        }
        assertEquals(openings, odds.get(1).outcomes().equity(), 1e-5);
        assertEquals(any, odds.get(2).outcomes().equity(), 1e-5);
        assertEquals(StartOdds.Opening.NO_DOUBLES, odds.get(3).opening());
        assertEquals(2, odds.get(4).lookahead());
    }

    /** Sums by hand: a gammon won in 3 rolls with 30 plays, one of them blocked, and a single game lost in 2 with 50. */
    @Test
    void figuresAreAddedUp() {
        Played played = new Played();
        played.add(new Played.Game(1, 3, 30, 1));
        played.add(new Played.Game(3, 2, 50, 0));
        assertEquals(0.5, played.figures().get("win").value());
        assertEquals(0.5, played.figures().get("win gammon").value());
        assertEquals(0.5, played.figures().get("points").value());
        assertEquals(1.5, played.figures().get("points").error(), 1e-12);
        assertEquals(0.5, played.figures().get("gammon or more").value());
        assertEquals(0, played.figures().get("backgammon").value());
        assertEquals(2.5, played.figures().get("rolls a game").value());
        assertEquals(16, played.figures().get("legal plays a roll").value());
        assertEquals(
                20,
                played.figures().get("legal plays a roll that can be played").value());
        assertEquals(0.2, played.figures().get("rolls without a play").value());
    }

    /** The same games turn by turn, with plays listed by the rules and not by the fast generator. */
    @Test
    void gamesAreCountedAsTheyArePlayed() {
        int games = 5;
        int plays = 0;
        int rolls = 0;
        int points = 0;
        int blocked = 0;
        for (int game = 0; game < games; game++) {
            Dice dice = Dice.ofGame(9, 2L * game);
            EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(MODEL));
            List<List<Play>> choices = new ArrayList<>();
            GameLoop loop = new GameLoop();
            points += loop.play(
                    Position.start(),
                    dice.opening(),
                    player,
                    player,
                    dice,
                    dice,
                    (planes, roll, legal, chosen) -> choices.add(Plays.legal(Position.ofPlanes(planes, 0), roll)));
            rolls += loop.turns();
            for (List<Play> choice : choices) {
                boolean none = choice.get(0).toString().equals("no play");
                plays += none ? 0 : choice.size();
                blocked += none ? 1 : 0;
            }
        }
        Played played;
        try (SelfGames play = new SelfGames(Knowledge.of(MODEL)::judgement, 0, 9, 1)) {
            played = Played.of(play, games);
        }
        assertEquals(games, played.games());
        assertEquals((double) points / games, played.figures().get("points").value(), 1e-12);
        assertEquals(
                (double) rolls / games, played.figures().get("rolls a game").value(), 1e-12);
        assertEquals(
                (double) plays / rolls,
                played.figures().get("legal plays a roll").value(),
                1e-12);
        assertEquals(
                (double) blocked / rolls,
                played.figures().get("rolls without a play").value(),
                1e-12);
        assertTrue(blocked > 0, "none of these games has a roll without a play");
    }

    @Test
    void reportsSayTheSame() throws IOException {
        String text = printed("--games", "64", "--threads", "1");
        JsonNode json = new ObjectMapper().readTree(printed("--games", "64", "--threads", "2", "--json"));
        assertEquals(64, json.get("games").asInt());
        assertEquals(5, json.get("beforeTheFirstRoll").size());
        for (JsonNode figure : json.get("figures")) {
            String name = figure.get("figure").asText();
            String line = text.lines()
                    .filter(each -> each.startsWith("| " + name + " |"))
                    .findFirst()
                    .orElseThrow();
            assertTrue(
                    line.contains(figure.has("printed") ? figure.get("printed").asText() : "|  |  |"), line);
        }
        assertTrue(text.contains("| 0 | as the net was trained |"), text);
    }

    /** No printed figure is left over, and each has a source. */
    @Test
    void printedFiguresBelongToFiguresThatAreFound() {
        Played played = new Played();
        played.add(new Played.Game(0, 1, 1, 0));
        Set<String> found = played.figures().keySet();
        Printed.all().values().forEach(printed -> {
            assertTrue(found.contains(printed.figure()), printed.figure());
            assertTrue(!printed.text().isBlank() && !printed.source().isBlank(), printed.figure());
        });
        assertTrue(!Printed.all().isEmpty());
    }
}
