package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.RandomModel;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.record.OpenRecord;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.Rules;
import org.pipwright.engine.record.SgfText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** A table at which games are played, without its pages. */
class PlayTableTest {
    private static final Judges JUDGES = new Judges(name -> Knowledge.of(RandomModel.of(5)), 1);

    @TempDir
    Path folder;

    @AfterAll
    static void close() {
        JUDGES.close();
    }

    private PlayTable table(int length, Seat first, Seat second) {
        Heading heading = new Heading(
                List.of(first.name(), second.name()), new Rules(length, length == 0, false), Map.of(), List.of());
        return new PlayTable(OpenRecord.of(heading), List.of(first, second), 11, new RecordKeeper(folder, "game"));
    }

    private static Seat net(String name) {
        return Seat.net(name, JUDGES.of("random", 0));
    }

    private PlayTable people(int length) {
        return table(length, Seat.person("Ada"), Seat.person("Ben"));
    }

    private static String anyPlay(PlayTable table) {
        Roll roll = table.roll().orElseThrow();
        return PlayText.print(Plays.legal(table.stand().position(), roll).get(0));
    }

    private static void turn(PlayTable table) {
        table.throwDice();
        table.play(anyPlay(table));
    }

    private GameRecord kept() throws IOException {
        GameRecord text = RecordText.parse(Files.readString(folder.resolve("game.txt")));
        assertEquals(
                text.games(),
                SgfText.parse(Files.readString(folder.resolve("game.sgf"))).games());
        return text;
    }

    /** Nets play a match to its end; whatever has happened is on disk before the next thing does. */
    @Test
    void netsPlayAMatchAndEachTurnIsKept() throws IOException {
        PlayTable table = table(1, net("One"), net("Two"));
        int turns = 0;
        while (!table.stand().over()) {
            table.step();
            if (++turns % 20 == 1) {
                assertEquals(table.record(), kept());
            }
        }
        assertTrue(table.stand().last());
        assertEquals(table.record(), kept());
        assertThrows(RefusedException.class, table::step);
        assertThrows(RefusedException.class, table::nextGame);
    }

    @Test
    void diceTakenBackAreThrownAgainAlike() {
        PlayTable table = people(3);
        turn(table);
        GameRecord before = table.record();
        table.throwDice();
        Roll roll = table.roll().orElseThrow();
        table.play(anyPlay(table));
        table.back();
        assertEquals(before, table.record());
        assertTrue(table.roll().isEmpty());
        table.throwDice();
        assertEquals(roll, table.roll().orElseThrow());
        table.back();
        assertEquals(before, table.record());
        assertTrue(table.roll().isEmpty(), "only the dice were taken back");
    }

    /** Against a net a person gets back to its own last decision, not the net's. */
    @Test
    void takingBackPassesOverTheNet() {
        PlayTable table = table(3, Seat.person("Ada"), net("Two"));
        for (int i = 0; i < 6; i++) {
            if (table.netToAct()) {
                table.step();
            } else if (table.stand().offered()) {
                table.cube(CubeAction.TAKE);
            } else {
                turn(table);
            }
        }
        while (table.netToAct()) {
            table.step();
        }
        int entries = table.record().games().get(0).entries().size();
        table.back();
        assertFalse(table.netToAct());
        assertTrue(table.record().games().get(0).entries().size() < entries);
    }

    /** While a net thinks, the table can be seen, and played back under it: its answer is then no longer wanted. */
    @Test
    @Timeout(60)
    void nobodyWaitsForANetThatThinks() throws InterruptedException {
        CountDownLatch asked = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        PositionEvaluator plain = new NetworkEvaluator(RandomModel.of(5));
        Knowledge slow = Knowledge.of(() -> (planes, at, out, outAt) -> {
            asked.countDown();
            await(goOn);
            plain.evaluate(planes, at, out, outAt);
        });
        try (Judges judges = new Judges(name -> slow, 1)) {
            PlayTable table = table(3, Seat.person("Ada"), Seat.net("Two", judges.of("slow", 0)));
            while (!table.netToAct()) {
                turn(table);
            }
            GameRecord before = table.record();
            Thread page = new Thread(table::step);
            page.start();
            asked.await();
            assertEquals(before, table.record(), "seen while it thinks");
            table.back();
            GameRecord back = table.record();
            goOn.countDown();
            page.join();
            assertEquals(back, table.record(), "nothing is played that was thought before");
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void theRulesHold() {
        PlayTable table = people(2);
        assertThrows(RefusedException.class, () -> table.play("8/5 6/5"), "no dice yet");
        assertThrows(RefusedException.class, () -> table.cube(CubeAction.DOUBLE), "not before the first roll");
        table.throwDice();
        assertThrows(RefusedException.class, () -> table.play("13/1"));
        assertThrows(RefusedException.class, () -> table.play(null));
        table.play(anyPlay(table));
        assertThrows(RefusedException.class, () -> table.cube(CubeAction.ROLL), "dice are thrown, not asked for");
        int doubler = table.side();
        table.cube(CubeAction.DOUBLE);
        assertEquals(1 - doubler, table.side());
        assertThrows(RefusedException.class, table::throwDice, "the double is answered first");
        assertThrows(RefusedException.class, () -> table.resign(GameResult.SINGLE));
        table.cube(CubeAction.PASS);
        assertTrue(table.stand().over());
        table.nextGame();
        turn(table);
        assertThrows(RefusedException.class, () -> table.cube(CubeAction.DOUBLE), "the Crawford game");
    }

    /** With the Jacoby rule a gammon counts once the cube has been turned, and only then. */
    @Test
    void aGammonWantsATurnedCube() {
        PlayTable table = people(0);
        turn(table);
        table.resign(GameResult.GAMMON);
        assertEquals(1, Math.abs(table.stand().points()));
        table.nextGame();
        turn(table);
        table.cube(CubeAction.DOUBLE);
        table.cube(CubeAction.TAKE);
        turn(table);
        table.resign(GameResult.GAMMON);
        assertEquals(4, Math.abs(table.stand().points()));
        String next = TableView.of(1, table, "").said();
        assertTrue(next.matches("(Ada|Ben) resigns gammon\\. (Ada|Ben) wins 4 points\\."), next);
    }

    /** Nothing is shown that was not kept. */
    @Test
    void whatCannotBeKeptIsNotPlayed() throws IOException {
        PlayTable table = people(3);
        turn(table);
        GameRecord before = table.record();
        Files.delete(folder.resolve("game.txt"));
        Files.delete(folder.resolve("game.sgf"));
        Files.delete(folder);
        table.throwDice();
        String message = assertThrows(RefusedException.class, () -> table.play(anyPlay(table)))
                .getMessage();
        assertTrue(message.startsWith("the record could not be kept, so nothing was played: "), message);
        assertEquals(before, table.record());
        Files.createDirectory(folder);
        table.play(anyPlay(table));
        assertEquals(table.record(), kept());
    }
}
