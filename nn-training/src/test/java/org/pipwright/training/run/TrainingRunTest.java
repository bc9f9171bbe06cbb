package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Whole runs: the same networks however they are cut into threads and sittings, and all files written. */
class TrainingRunTest {
    @TempDir
    Path temporary;

    private Path folder(String name) {
        return temporary.resolve(name);
    }

    @Test
    void threadsDoNotMatter() {
        SmallRun one = SmallRun.finish(folder("one"), SmallRun.SETTINGS, 1);
        SmallRun two = SmallRun.finish(folder("two"), SmallRun.SETTINGS, 2);
        assertEquals(List.of(32L, 64L, 96L, 128L, 150L), one.rounds);
        assertEquals(one.rounds, two.rounds);
        Checkpoints.assertSame(Checkpoints.newest(folder("one")), Checkpoints.newest(folder("two")));
        assertEquals(one.evaluations.get(0).evaluation(), two.evaluations.get(0).evaluation());
        assertTrue(one.warnings.isEmpty() && two.warnings.isEmpty());

        SmallRun.finish(folder("other"), SmallRun.SETTINGS.with(Setting.SEED, "18"), 2);
        assertNotEquals(
                Checkpoints.newest(folder("one")).samples(),
                Checkpoints.newest(folder("other")).samples());
    }

    @ParameterizedTest
    @CsvSource({"sparse, 0", "sparse, 0.5", "reference, 0"})
    void sittingsDoNotMatter(String learner, String varied) {
        TrainingSettings settings =
                SmallRun.SETTINGS.with(Setting.LEARNER, learner).with(Setting.RANDOM_OPENINGS, varied);
        SmallRun.finish(folder("through"), settings, 1);
        RunFolder.create(folder("cut"), settings);
        for (int rounds : new int[] {1, 2, 100}) {
            SmallRun sitting = new SmallRun();
            TrainingRun.run(
                    RunFolder.open(folder("cut")), rounds == 2 ? 2 : 1, sitting, SmallRun.PAGE, sitting.after(rounds));
            assertEquals(Math.min(rounds, 2), sitting.rounds.size());
        }
        Checkpoint through = Checkpoints.newest(folder("through"));
        assertEquals(150, through.games());
        Checkpoints.assertSame(through, Checkpoints.newest(folder("cut")));
    }

    /** Its settings and the head of its figures name some things otherwise. */
    @Test
    void aRunOfAnEarlierVersionGoesOn() throws IOException {
        TrainingSettings settings =
                SmallRun.SETTINGS.with(Setting.CONSTANT_SHARE, "0.5").with(Setting.EVALUATION_SECONDS, "1");
        SmallRun.finish(folder("through"), settings, 1);
        RunFolder old = RunFolder.create(folder("old"), settings);
        SmallRun sitting = new SmallRun();
        TrainingRun.run(old, 1, sitting, SmallRun.PAGE, sitting.after(2));
        Path file = folder("old").resolve("settings.txt");
        Files.writeString(
                file,
                Files.readString(file)
                        .replaceFirst("\nevaluation.rival = pips", "")
                        .replace("\nconstant.share =", "\nhold =")
                        .replace("\nevaluation.", "\ngauge."));
        Path figures = old.metricsFile();
        Files.writeString(figures, Files.readString(figures).replace("evaluation_games", "gauge_games"));

        assertEquals(settings, RunFolder.open(folder("old")).settings());
        SmallRun.finish(RunFolder.open(folder("old")), 1);
        Checkpoints.assertSame(Checkpoints.newest(folder("through")), Checkpoints.newest(folder("old")));
        assertTrue(MetricsFile.open(figures, 150).lines().size() > 1);
    }

    @Test
    void aFinishedRunIsReportedAgain() throws IOException {
        SmallRun.finish(folder("run"), SmallRun.SETTINGS, 1);
        Path report = RunFolder.open(folder("run")).reportFile();
        int charts = Files.readString(report).split("Chart\\[").length;
        Path net = RunFolder.open(folder("run")).modelFile();
        byte[] asTrained = Files.readAllBytes(net);
        Files.delete(report);
        SmallRun again = SmallRun.finish(RunFolder.open(folder("run")), 2);
        assertEquals(charts, Files.readString(report).split("Chart\\[").length);
        assertTrue(again.rounds.isEmpty() && again.evaluations.isEmpty());
        assertArrayEquals(asTrained, Files.readAllBytes(net), "the net still says who trained it");

        Files.delete(net);
        Files.delete(report);
        SmallRun.finish(RunFolder.open(folder("run")), 1);
        assertEquals(charts, Files.readString(report).split("Chart\\[").length);
        assertEquals("150", ModelFile.read(net).notes().get("games"));
    }

    @Test
    void everythingIsWritten() throws IOException {
        SmallRun run = SmallRun.finish(folder("run"), SmallRun.SETTINGS, 2);
        RunFolder folder = RunFolder.open(folder("run"));
        assertEquals(SmallRun.SETTINGS, folder.settings());

        Model model = ModelFile.read(folder.modelFile());
        assertEquals("150", model.notes().get("games"));
        assertEquals(SmallRun.SETTINGS.differences(), model.notes().get("settings"));
        Checkpoint checkpoint = Checkpoints.newest(folder("run"));
        float[] row = Arrays.copyOf(checkpoint.contact().arrays().get(0), 16);
        assertTrue(
                Arrays.equals(row, Arrays.copyOf(model.contact().layers().get(0).weights(), 16)));

        List<Metrics> lines = MetricsFile.open(folder.metricsFile(), 150).lines();
        assertEquals(1, lines.size());
        assertEquals(150, lines.get(0).games());
        assertEquals(run.evaluations.get(0).toCsv(), lines.get(0).toCsv());
        assertTrue(lines.get(0).turns() > 20, "turns of a game");
        String manifest = Files.readString(folder.manifestFile());
        for (String fact : List.of("started", "commit", "java", "machine", "cores", "threads = 2")) {
            assertTrue(manifest.contains(fact), manifest);
        }
        assertTrue(Files.readString(folder.reportFile()).contains("150 games"));
        assertEquals(2, Files.readAllLines(folder.openingsFile()).size());
    }

    @Test
    void theManifestKeepsItsHistory() throws IOException {
        SmallRun first = new SmallRun();
        RunFolder folder = RunFolder.create(folder("run"), SmallRun.SETTINGS);
        TrainingRun.run(folder, 1, first, SmallRun.PAGE, first.after(2));
        String started = Files.readString(folder.manifestFile());
        SmallRun.finish(RunFolder.open(folder("run")), 2);
        String resumed = Files.readString(folder.manifestFile());
        assertTrue(resumed.startsWith(started + "\nresumed = after 64 games\nstarted = "), resumed);
        assertEquals(1, resumed.split("threads = 2", -1).length - 1, resumed);
    }

    /** To resume what is finished changes nothing; with more games it goes on. */
    @Test
    void finishedRunsCanGoOnForLonger() throws IOException {
        SmallRun.finish(folder("run"), SmallRun.SETTINGS, 1);
        RunFolder folder = RunFolder.open(folder("run"));
        String before = Files.readString(folder.metricsFile());
        SmallRun again = SmallRun.finish(folder, 1);
        assertTrue(again.rounds.isEmpty() && again.evaluations.isEmpty());
        assertEquals(before, Files.readString(folder.metricsFile()));

        folder.writeSettings(SmallRun.SETTINGS.with(Setting.GAMES, "200"));
        SmallRun longer = SmallRun.finish(RunFolder.open(folder("run")), 1);
        assertEquals(List.of(182L, 200L), longer.rounds);
        assertEquals(2, MetricsFile.open(folder.metricsFile(), 200).lines().size());
    }

    @Test
    void timeEndsARun() {
        TrainingSettings settings = SmallRun.SETTINGS
                .with(Setting.GAMES, "0")
                .with(Setting.MINUTES, "0.01")
                .with(Setting.ROUND, "4");
        SmallRun run = SmallRun.finish(folder("run"), settings, 1);
        Checkpoint last = Checkpoints.newest(folder("run"));
        assertTrue(last.seconds() >= 0.6, last.seconds() + " seconds");
        assertEquals(last.games(), run.rounds.get(run.rounds.size() - 1));
    }

    @Test
    void aRunWithoutLimitIsRefused() {
        RunFolder folder = RunFolder.create(folder("run"), SmallRun.SETTINGS.with(Setting.GAMES, "0"));
        String message = assertThrows(InvalidRunException.class, () -> SmallRun.finish(folder, 1))
                .getMessage();
        assertEquals("the run would never end: give a number of games, minutes or hours", message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"16", "16,9", "8,16", "16,8,4"})
    void otherShapesDoNotResume(String hidden) {
        SmallRun.finish(folder("run"), SmallRun.SETTINGS, 1);
        RunFolder folder = RunFolder.open(folder("run"));
        folder.writeSettings(SmallRun.SETTINGS.with(Setting.CONTACT_HIDDEN, hidden));
        RunFolder changed = RunFolder.open(folder("run"));
        String message = assertThrows(InvalidRunException.class, () -> SmallRun.finish(changed, 1))
                .getMessage();
        assertTrue(message.contains("does not fit the settings") && !message.contains("\n"), message);
    }

    /** The reduced games run through the same code. */
    @ParameterizedTest
    @CsvSource({"2, any", "3, no-doubles"})
    void reducedGames(String checkers, String opening) throws IOException {
        TrainingSettings settings =
                SmallRun.SETTINGS.with(Setting.CHECKERS, checkers).with(Setting.OPENING, opening);
        SmallRun.finish(folder("run"), settings, 2);
        RunFolder folder = RunFolder.open(folder("run"));
        assertEquals(150, Checkpoints.newest(folder("run")).games());
        Metrics metrics = MetricsFile.open(folder.metricsFile(), 150).lines().get(0);
        assertTrue(metrics.turns() > 2 && metrics.turns() < 40, "turns " + metrics.turns());
    }
}
