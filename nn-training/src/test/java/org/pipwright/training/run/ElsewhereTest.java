package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Games of a run that others play give the same nets bit for bit. */
class ElsewhereTest {
    private static final TrainingSettings STALE = SmallRun.SETTINGS.with(Setting.STALENESS, "1");

    @TempDir
    Path temporary;

    private Path folder(String name) {
        return temporary.resolve(name);
    }

    private static SmallRun sitting(RunFolder folder, Workforce workforce, int rounds) {
        SmallRun listener = new SmallRun();
        TrainingRun.run(folder, 2, workforce, listener, SmallRun.PAGE, listener.after(rounds));
        return listener;
    }

    private Checkpoint trained(String name, TrainingSettings settings, Workforce workforce) {
        SmallRun run = sitting(RunFolder.create(folder(name), settings), workforce, Integer.MAX_VALUE);
        assertEquals(List.of(), run.warnings);
        return Checkpoints.newest(folder(name));
    }

    private byte[] weights(String name) throws IOException {
        Model model = ModelFile.read(RunFolder.open(folder(name)).modelFile());
        return ModelFile.toBytes(new Model(model.contact(), model.race(), Map.of()));
    }

    @ParameterizedTest
    @CsvSource({"td, 1, 0", "lookahead, 0.04, 0", "rollout, 0.01, 0", "net, 1, 0", "td, 1, 1"})
    void theSameNet(String targets, String share, String staleness) throws IOException {
        Path other = folder("other.safetensors");
        ModelFile.write(
                other,
                new Model(
                        InitialLayers.network(FeatureSet.CONTACT_2, List.of(9), 7),
                        InitialLayers.network(FeatureSet.RACE_1, List.of(8), 8),
                        Map.of()));
        TrainingSettings settings = SmallRun.SETTINGS
                .with(Setting.GAMES, "70")
                .with(Setting.TARGETS, targets)
                .with(Setting.TARGET_NET, targets.equals("net") ? other.toString() : "none")
                .with(Setting.SAMPLE_SHARE, share)
                .with(Setting.ROLLOUT_TRUNCATION, "2")
                .with(Setting.STALENESS, staleness);
        Checkpoints.assertSame(trained("here", settings, null), trained("there", settings, new Post()));
        assertArrayEquals(weights("here"), weights("there"));
        assertFalse(
                Files.readString(RunFolder.open(folder("here")).manifestFile()).contains("cluster"));
        assertTrue(Files.readString(RunFolder.open(folder("there")).manifestFile())
                .contains("\ngames = played on a cluster\n"));
    }

    /** Two rounds are played by the first net, and the third by that of the first. */
    @Test
    void aStaleNetPlays() {
        TrainingSettings settings = SmallRun.SETTINGS.with(Setting.GAMES, "32");
        Checkpoint first = trained("first", settings, null);
        Checkpoint staleFirst = trained("stale first", settings.with(Setting.STALENESS, "1"), null);
        Checkpoints.assertSame(first, staleFirst);
        assertTrue(first.stale().isEmpty());

        TrainingSettings two = settings.with(Setting.GAMES, "64");
        assertFalse(Arrays.equals(
                trained("two", two, null).contact().arrays().get(0),
                trained("stale two", two.with(Setting.STALENESS, "1"), null)
                        .contact()
                        .arrays()
                        .get(0)));
    }

    /** Stopped while the next round was being played, and gone on with here or there. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void sittingsDoNotMatter(boolean elsewhere) throws IOException {
        Checkpoint through = trained("through", STALE, null);
        RunFolder.create(folder("cut"), STALE);
        for (int rounds : new int[] {2, 1, 100}) {
            boolean away = elsewhere == (rounds != 1);
            SmallRun run = sitting(RunFolder.open(folder("cut")), away ? new Post() : null, rounds);
            assertEquals(Math.min(rounds, 2), run.rounds.size());
        }
        Checkpoints.assertSame(through, Checkpoints.newest(folder("cut")));
        assertArrayEquals(weights("through"), weights("cut"));
    }

    /** Everybody is gone after some rounds. */
    private static final class Unreliable implements Workforce {
        private final Workforce workers = new Post();
        private int rounds;

        Unreliable(int rounds) {
            this.rounds = rounds;
        }

        @Override
        public int size() {
            return workers.size();
        }

        @Override
        public <V extends Serializable> Shared<V> share(V value) {
            return workers.share(value);
        }

        @Override
        public <T extends Serializable, R extends Serializable> void inOrder(
                Trade<T, R> trade, Iterator<T> tasks, Predicate<R> taken, BooleanSupplier stopped) {
            if (rounds-- == 0) {
                throw new WorkforceException("nobody is left");
            }
            workers.inOrder(trade, tasks, taken, stopped);
        }

        @Override
        public void close() {
            workers.close();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "1"})
    void whatWasLearnedIsKept(String staleness) {
        TrainingSettings settings = SmallRun.SETTINGS.with(Setting.STALENESS, staleness);
        Checkpoint through = trained("through", settings, null);
        RunFolder folder = RunFolder.create(folder("cut"), settings);
        WorkforceException gone = assertThrows(WorkforceException.class, () -> sitting(folder, new Unreliable(3), 100));
        assertEquals("nobody is left", gone.getMessage());
        assertEquals(96, Checkpoints.newest(folder("cut")).games());
        sitting(RunFolder.open(folder("cut")), null, 100);
        Checkpoints.assertSame(through, Checkpoints.newest(folder("cut")));
    }
}
