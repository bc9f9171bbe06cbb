package org.pipwright.training.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.training.learner.InitialLayers;

/** The table of opening plays. */
class OpeningChoicesTest {
    private static final Model FIRST = model(1);
    private static final Model SECOND = model(2);

    @TempDir
    Path folder;

    private static Model model(long seed) {
        return new Model(
                InitialLayers.network(FeatureSet.CONTACT_1, List.of(8), seed),
                InitialLayers.network(FeatureSet.RACE_1, List.of(8), seed),
                Map.of());
    }

    private Path file() {
        return folder.resolve("openings.csv");
    }

    private OpeningChoices written() throws IOException {
        OpeningChoices choices = OpeningChoices.open(file(), 0);
        choices.add(100, FIRST);
        choices.add(200, FIRST);
        choices.add(300, SECOND);
        choices.write();
        return choices;
    }

    /** The plays are those that self-play would make. */
    @Test
    void playsAreThePlayers() throws IOException {
        written();
        String[] header = Files.readAllLines(file()).get(0).split(",");
        String[] fields = Files.readAllLines(file()).get(1).split(",");
        assertEquals("games", header[0]);
        assertEquals("100", fields[0]);
        assertEquals(16, fields.length);
        PlayGenerator generator = new PlayGenerator();
        int[] planes = Position.start().toPlanes();
        EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(FIRST));
        for (int r = 0; r < 15; r++) {
            Roll roll = Roll.opening().get(r);
            assertEquals(roll.toString(), header[r + 1]);
            generator.generate(planes, 0, roll.high(), roll.low());
            int chosen = player.choose(planes, 0, generator, Dice.ofGame(1, 1));
            Position after = Position.ofPlanes(generator.results(), chosen * Planes.STRIDE);
            assertEquals(
                    after, PlayText.parse(fields[r + 1], Position.start(), roll).result());
        }
    }

    @Test
    void linesBeyondTheCheckpointAreDropped() throws IOException {
        written();
        String all = Files.readString(file());
        OpeningChoices.open(file(), 300).write();
        assertEquals(all, Files.readString(file()));
        OpeningChoices.open(file(), 299).write();
        assertEquals(all.substring(0, all.indexOf("\n300,") + 1), Files.readString(file()));
        OpeningChoices.open(file(), 99).write();
        assertEquals(1, Files.readAllLines(file()).size());
    }

    @Test
    void unchangedPlaysAreMarked() throws IOException {
        OpeningTable table = written().table(8);
        assertEquals(List.of(100L, 200L, 300L), table.games());
        assertEquals(15, table.rows().size());
        for (OpeningTable.Row row : table.rows()) {
            assertEquals(
                    row.choices().stream()
                            .map(choice ->
                                    choice.play().equals(row.choices().get(0).play()))
                            .limit(2)
                            .toList(),
                    List.of(true, row.choices().get(1).same()));
            assertFalse(row.choices().get(0).same());
            assertEquals(
                    row.choices().get(2).play().equals(row.choices().get(1).play()),
                    row.choices().get(2).same());
        }
    }

    /** Of a net that has learned nothing few plays are those that sources name. */
    @Test
    void printedPlaysStandBeside() throws IOException {
        OpeningTable table = written().table(8);
        OpeningTable.Row row = table.rows().stream()
                .filter(each -> each.roll().equals("3-1"))
                .findFirst()
                .orElseThrow();
        assertEquals("8/5 6/5", row.printed());
        for (OpeningTable.Row each : table.rows()) {
            String last = each.choices().get(2).play();
            Roll roll = Roll.parse(each.roll());
            Position after = PlayText.parse(last, Position.start(), roll).result();
            boolean named = PrintedOpening.all().stream()
                    .filter(printed -> printed.roll().equals(roll))
                    .flatMap(printed -> Stream.concat(printed.best().stream(), printed.close().stream()))
                    .anyMatch(play -> play.result().equals(after));
            assertEquals(named, each.agrees(), each.toString());
        }
        assertTrue(table.agreeing() < 15, "by chance");
    }

    /** Many times are thinned out: the first, the last, and about a constant factor between. */
    @Test
    void columnsAreSpreadOverTheRun() throws IOException {
        OpeningChoices choices = OpeningChoices.open(file(), 0);
        for (int i = 1; i <= 300; i++) {
            choices.add(i * 1000L, FIRST);
        }
        List<Long> games = choices.table(8).games();
        assertEquals(1_000, games.get(0));
        assertEquals(300_000, games.get(games.size() - 1));
        assertTrue(games.size() >= 5 && games.size() <= 8, games.toString());
    }
}
