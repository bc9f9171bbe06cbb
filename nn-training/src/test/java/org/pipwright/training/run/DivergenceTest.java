package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.learner.LearnerState;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** A run whose weights run away goes back, slows down and says so; one that cannot be mended gives up. */
class DivergenceTest {
    private static final TrainingSettings SETTINGS =
            SmallRun.SETTINGS.with(Setting.GAMES, "3000").with(Setting.ROUND, "256");

    @TempDir
    Path temporary;

    @Test
    void tooHighARateIsLowered() throws IOException {
        Path path = temporary.resolve("run");
        SmallRun run = SmallRun.finish(path, SETTINGS.with(Setting.RATE_FIRST, "1"), 2);
        assertFalse(run.warnings.isEmpty());
        double scale = 1;
        for (String warning : run.warnings) {
            scale /= 2;
            assertEquals(
                    "training diverged: back to 0 games, and on at " + scale + " of the planned learning rate",
                    warning);
        }
        Checkpoint last = Checkpoints.newest(path);
        assertEquals(scale, last.rateScale());
        assertEquals(3000, last.games());
        ModelFile.read(RunFolder.open(path).modelFile());
        double loss = run.evaluations.get(run.evaluations.size() - 1).contactLoss();
        assertTrue(loss < 3.6, "loss " + loss);
    }

    /** Weights as a bug or a faulty memory might leave them: finite, and far too large. */
    @ParameterizedTest
    @ValueSource(floats = {1e6f, 1e25f, 3e38f})
    void givesUpAfterTenTimes(float weight) throws IOException {
        Path path = temporary.resolve("run");
        SmallRun start = new SmallRun();
        TrainingRun.run(RunFolder.create(path, SETTINGS), 1, start, ReportPage.NONE, start.after(1));
        Checkpoint sound = Checkpoints.newest(path);
        RunFolder folder = RunFolder.open(path);
        folder.write(new Checkpoint(
                sound.round() + 1,
                sound.games(),
                sound.samples(),
                sound.seconds(),
                1,
                spoilt(sound.contact(), weight),
                sound.race(),
                Optional.empty()));

        SmallRun run = new SmallRun();
        String message = assertThrows(
                        InvalidRunException.class, () -> TrainingRun.run(folder, 1, run, ReportPage.NONE, () -> false))
                .getMessage();
        assertEquals(10, run.warnings.size());
        assertTrue(run.warnings.get(9).contains("back to 256 games, and on at 9.765625E-4 of"), run.warnings.get(9));
        assertTrue(message.startsWith("training diverged 11 times, at last with a learning rate of "), message);
        assertTrue(message.endsWith(": set a lower rate.first"), message);
        assertTrue(run.rounds.isEmpty());
    }

    /** Every weight of the last layer so large, with the sign it had. */
    private static LearnerState spoilt(LearnerState state, float weight) {
        List<float[]> arrays = state.arrays().stream().map(float[]::clone).toList();
        float[] last = arrays.get(arrays.size() - 3);
        for (int i = 0; i < last.length; i++) {
            last[i] = Math.signum(last[i]) * weight;
        }
        return new LearnerState(state.steps(), arrays);
    }

    /** Else a run that had to slow down would run away again after each stop. */
    @Test
    void aResumedRunStaysSlow() throws IOException {
        Path path = temporary.resolve("run");
        SmallRun start = new SmallRun();
        TrainingRun.run(RunFolder.create(path, SmallRun.SETTINGS), 1, start, ReportPage.NONE, start.after(1));
        Checkpoint full = Checkpoints.newest(path);
        assertEquals(1, full.rateScale());
        RunFolder.open(path)
                .write(new Checkpoint(
                        full.round() + 1,
                        full.games(),
                        full.samples(),
                        full.seconds(),
                        0.25,
                        full.contact(),
                        full.race(),
                        Optional.empty()));
        SmallRun run = SmallRun.finish(RunFolder.open(path), 1);
        assertEquals(List.of(), run.warnings);
        Checkpoint last = Checkpoints.newest(path);
        assertEquals(150, last.games());
        assertEquals(0.25, last.rateScale());
        double planned = SmallRun.finish(temporary.resolve("calm"), SmallRun.SETTINGS, 1)
                .evaluations
                .get(0)
                .rate();
        assertEquals(planned / 4, run.evaluations.get(0).rate(), 1e-9 * planned);
    }

    /** Figures of games that will be played again are dropped when the run goes back. */
    @Test
    void figuresGoBackToo() throws IOException {
        Path path = temporary.resolve("run");
        SmallRun run =
                SmallRun.finish(path, SETTINGS.with(Setting.RATE_FIRST, "1").with(Setting.EVALUATION_SECONDS, "1"), 1);
        assertFalse(run.warnings.isEmpty());
        long[] games = MetricsFile.open(RunFolder.open(path).metricsFile(), Long.MAX_VALUE).lines().stream()
                .mapToLong(Metrics::games)
                .toArray();
        long[] rising = Arrays.stream(games).sorted().distinct().toArray();
        assertEquals(Arrays.toString(rising), Arrays.toString(games));
    }
}
