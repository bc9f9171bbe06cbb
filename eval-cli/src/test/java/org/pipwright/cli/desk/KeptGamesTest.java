package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.RandomModel;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.Rules;
import org.pipwright.engine.record.SgfText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** What was played at an earlier desk, however that ended, is gone on with. */
class KeptGamesTest {
    private static final List<String> NETS = List.of("one", "two");

    @TempDir
    Path folder;

    private final Judges judges = new Judges(name -> Knowledge.of(RandomModel.of(5)), 1);

    @AfterEach
    void close() {
        judges.close();
    }

    private DeskSetup setup() {
        return new DeskSetup(0, NETS, name -> Knowledge.of(RandomModel.of(5)), folder, 1);
    }

    private KeptGames games() {
        return new KeptGames(setup(), judges);
    }

    private PlayTable laid(int number, Map<String, String> more) {
        Map<String, String> fields = new HashMap<>(Map.of("name0", "Ada", "length", "3", "seed", "5"));
        fields.putAll(more);
        return new TableForm(setup(), judges).table(fields::get, number);
    }

    private static void turn(PlayTable table) {
        table.throwDice();
        Roll roll = table.roll().orElseThrow();
        table.play(PlayText.print(Plays.legal(table.stand().position(), roll).get(0)));
    }

    /** Nothing but the dice on the table is lost when a desk ends without notice; they come again. */
    @Test
    void theNextDeskGoesOnFromTheLastTurn() throws IOException {
        PlayTable before = laid(1, Map.of("name1", "Ben"));
        turn(before);
        turn(before);
        before.cube(CubeAction.DOUBLE);
        before.cube(CubeAction.TAKE);
        GameRecord kept = before.record();
        before.throwDice();
        Roll lost = before.roll().orElseThrow();

        KeptGames games = games();
        Tables tables = new Tables();
        HomeView.Kept offered = games.besides(tables).get(0);
        assertTrue(offered.words().startsWith("Ada against Ben, match to 3, game 1, begun 20"), offered.words());
        int number = tables.add(any -> games.table(offered.name()));
        PlayTable again = tables.find(number).orElseThrow();
        assertEquals(kept, again.record());
        assertEquals(before.file(), again.file());
        assertEquals(before.side(), again.side());
        again.throwDice();
        assertEquals(lost, again.roll().orElseThrow());
        turn(again);
        GameRecord text = RecordText.parse(Files.readString(again.file()));
        assertEquals(again.record(), text);
        Path sgf = folder.resolve(offered.name() + ".sgf");
        assertEquals(text.games(), SgfText.parse(Files.readString(sgf)).games());

        assertEquals(List.of(), games.besides(tables), "it is on a table by now");
        assertEquals(number, tables.add(any -> games.table(offered.name())), "and on one only");
        assertEquals(1, tables.all().size());
    }

    @Test
    void netsSitDownAgain() {
        PlayTable before = laid(2, Map.of("who1", "two", "lookahead1", "1", "length", "0", "jacoby", "on"));
        while (before.record().games().get(0).entries().isEmpty()) {
            if (before.netToAct()) {
                before.step();
            } else {
                turn(before);
            }
        }
        KeptGames games = games();
        PlayTable again = games.table(games.besides(new Tables()).get(0).name());
        assertTrue(again.seat(0).net().isEmpty());
        assertEquals(1, again.seat(1).net().orElseThrow().effort().lookahead());
        assertEquals(before.record(), again.record());
        KeptGames others = new KeptGames(
                new DeskSetup(0, List.of("one"), name -> Knowledge.of(RandomModel.of(5)), folder, 1), judges);
        assertEquals(List.of(), others.besides(new Tables()), "the net is not at this desk");
    }

    /** Neither what has ended, nor what no table has written, nor what is damaged. */
    @Test
    void nothingElseIsOffered() throws IOException {
        PlayTable ended = laid(3, Map.of("length", "1"));
        turn(ended);
        ended.resign(GameResult.SINGLE);
        assertTrue(ended.stand().last());
        PlayTable open = laid(4, Map.of());
        turn(open);
        String text = Files.readString(open.file());
        Files.writeString(folder.resolve("mine.txt"), text);
        Files.writeString(folder.resolve("2026-01-01-000000-1.txt"), text.substring(0, text.length() - 3) + "x");
        Files.writeString(folder.resolve("2026-01-01-000000-2.txt"), text.replace("Dice by seed", "Dice of"));
        Files.createDirectory(folder.resolve("2026-01-01-000000-3.txt"));
        KeptGames games = games();
        List<HomeView.Kept> offered = games.besides(new Tables());
        assertEquals(1, offered.size(), offered.toString());
        for (String name : new String[] {
            null, "", "mine", "2026-01-01-000000-1", "../" + offered.get(0).name()
        }) {
            assertThrows(IllegalArgumentException.class, () -> games.table(name), name);
        }
        Files.delete(open.file());
        assertThrows(
                IllegalArgumentException.class, () -> games.table(offered.get(0).name()));
    }

    /** Two desks may share a folder, and lay their first tables within the same second. */
    @Test
    void noRecordTakesThePlaceOfAnother() throws IOException {
        GameRecord first = record("Ada");
        GameRecord second = record("Cleo");
        RecordKeeper one = RecordKeeper.begun(folder, "2026-01-01-000000-", 1);
        RecordKeeper other = RecordKeeper.begun(folder, "2026-01-01-000000-", 1);
        assertFalse(Files.exists(one.file()), "nothing is kept before the first turn");
        one.keep(first);
        other.keep(second);
        one.keep(first);
        assertEquals(
                List.of("2026-01-01-000000-1.txt", "2026-01-01-000000-2.txt"),
                List.of(
                        one.file().getFileName().toString(),
                        other.file().getFileName().toString()));
        assertEquals(first, RecordText.parse(Files.readString(one.file())));
        assertEquals(second, RecordText.parse(Files.readString(other.file())));
        assertEquals(
                second.games(),
                SgfText.parse(Files.readString(folder.resolve("2026-01-01-000000-2.sgf")))
                        .games());
    }

    private static GameRecord record(String player) {
        return RecordText.parse("pipwright record 1\nplayers: " + player + ", Ben\nmatch: 3\n\ngame 1: 0-0\n" + player
                + " 3-1: 8/5 6/5\n");
    }

    @Test
    void whoSitsWhereIsReadBack() {
        List<Optional<Sitting.Chair>> chairs = List.of(
                Optional.empty(), Optional.of(new Sitting.Chair("one", 0)), Optional.of(new Sitting.Chair("two", 2)));
        List<String> players = List.of("Ada", "Ben");
        for (Optional<Sitting.Chair> first : chairs) {
            for (Optional<Sitting.Chair> second : chairs) {
                Sitting sitting = new Sitting(123_456_789, List.of(first, second));
                Heading heading = new Heading(
                        players, new Rules(3, false, false), Map.of(), List.of("by hand", sitting.remark(players)));
                assertEquals(Optional.of(sitting), Sitting.of(heading, NETS));
            }
        }
        assertFalse(
                Sitting.of(new Heading(List.of("Ada", "Ben"), new Rules(3, false, false), Map.of(), List.of()), NETS)
                        .isPresent());
    }
}
