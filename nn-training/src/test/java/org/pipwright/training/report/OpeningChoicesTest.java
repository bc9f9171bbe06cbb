package org.pipwright.training.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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
    void unchangedPlaysAreGrey() throws IOException {
        String html = written().toHtml(8);
        assertEquals(16, html.split("<tr>", -1).length - 1);
        assertTrue(html.contains("<th>100</th><th>200</th><th>300</th>"), html);
        // All fifteen of the second column, and none of the first.
        assertTrue(html.split("class=same", -1).length - 1 >= 15);
        for (String row : html.split("<tr>")) {
            assertFalse(row.matches("(?s)<th>\\d-\\d</th><td class=same>.*"), row);
        }
    }

    /** Many times are thinned out: the first, the last, and about a constant factor between. */
    @Test
    void columnsAreSpreadOverTheRun() throws IOException {
        OpeningChoices choices = OpeningChoices.open(file(), 0);
        for (int i = 1; i <= 300; i++) {
            choices.add(i * 1000L, FIRST);
        }
        String html = choices.toHtml(8);
        String header = html.substring(0, html.indexOf("</tr>"));
        assertTrue(header.contains("<th>1,000</th>") && header.contains("<th>300,000</th>"), header);
        int columns = header.split("<th>").length - 2;
        assertTrue(columns >= 5 && columns <= 8, header);
    }
}
