package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.learner.Learner;
import org.pipwright.training.learner.LearnerState;
import org.pipwright.training.selfplay.SampleTarget;
import org.pipwright.training.selfplay.Samples;
import org.pipwright.training.selfplay.SelfPlay;
import org.pipwright.training.selfplay.SelfPlayRules;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** A round against its games played one by one; and the batches made of it. */
class RoundTest {
    private static final Model MODEL = new Model(
            InitialLayers.network(FeatureSet.CONTACT_1, List.of(16), 5),
            InitialLayers.network(FeatureSet.RACE_1, List.of(16), 6),
            Map.of());
    private static final int FIRST = 1000;
    private static final int GAMES = 40;

    private static Round round(int threads) {
        return round(SmallRun.SETTINGS, GAMES, threads);
    }

    private static Round round(TrainingSettings settings, int games, int threads) {
        try (Crew<Integer> workers = Crew.numbered(threads)) {
            RunKnowledge knowledge =
                    new RunKnowledge(settings, TableFolder.ofUser(System.getenv()), 1, RunKnowledge.teacher(settings));
            return new PlayersHere(RoundRules.of(settings), knowledge, workers)
                    .play(new Players.Wanted(MODEL, FIRST, games, 0.7f), () -> false);
        }
    }

    private static void assertSame(Samples expected, Samples found) {
        assertEquals(expected.size(), found.size());
        int planes = expected.size() * Planes.STRIDE;
        int targets = expected.size() * Outcomes.COUNT;
        assertArrayEquals(Arrays.copyOf(expected.planes(), planes), Arrays.copyOf(found.planes(), planes));
        assertArrayEquals(Arrays.copyOf(expected.targets(), targets), Arrays.copyOf(found.targets(), targets));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void gamesInOrderWhoeverPlaysThem(int threads) {
        Round round = round(threads);
        Samples contact = new Samples(64);
        Samples race = new Samples(64);
        int[] ends = new int[Outcomes.COUNT];
        long turns = 0;
        SelfPlay play = new SelfPlay(
                Judgement.by(new NetworkEvaluator(MODEL)), SelfPlayRules.plain(Position.start()), SampleTarget.TD);
        for (int game = FIRST; game < FIRST + GAMES; game++) {
            Samples samples = new Samples(64);
            play.play(Dice.ofGame(SmallRun.SETTINGS.seed(), game), 0.7f, samples);
            for (int k = 0; k < ends.length; k++) {
                ends[k] += (int) play.outcome()[k];
            }
            turns += play.turns();
            for (int i = 0; i < samples.size(); i++) {
                boolean touching =
                        Position.ofPlanes(samples.planes(), i * Planes.STRIDE).contact();
                (touching ? contact : race)
                        .add(samples.planes(), i * Planes.STRIDE, samples.targets(), i * Outcomes.COUNT);
            }
        }
        assertTrue(contact.size() > 0 && race.size() > 0);
        assertSame(contact, round.contact);
        assertSame(race, round.race);
        assertEquals(GAMES, Arrays.stream(ends).sum());
        assertEquals(ends[1] + ends[4], round.gammons);
        assertEquals(ends[2] + ends[5], round.backgammons);
        assertEquals(turns, round.turns);
    }

    /** Rollouts of one roll with its luck taken off say what lookahead 1 says. */
    @ParameterizedTest
    @ValueSource(strings = {"lookahead", "rollout"})
    void targetsAreThoseThatTheSettingsName(String targets) {
        TrainingSettings settings = SmallRun.SETTINGS
                .with(Setting.TARGETS, targets)
                .with(Setting.SAMPLE_SHARE, "0.1")
                .with(Setting.ROLLOUT_TRUNCATION, "1");
        Lookahead search = new Lookahead(Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.DEFAULT);
        Samples samples = round(settings, 4, 2).contact;
        assertTrue(samples.size() > 5);
        for (int i = 0; i < samples.size(); i++) {
            float[] expected = new float[Outcomes.COUNT];
            search.evaluate(samples.planes(), i * Planes.STRIDE, 1, expected, 0);
            int at = i * Outcomes.COUNT;
            assertArrayEquals(expected, Arrays.copyOfRange(samples.targets(), at, at + Outcomes.COUNT), 1e-5f);
        }
    }

    /** The other net's answers to the positions that this one's games go through. */
    @Test
    void targetsMayComeFromAnotherNet(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("other.safetensors");
        Model other = new Model(
                InitialLayers.network(FeatureSet.CONTACT_2, List.of(9), 7),
                InitialLayers.network(FeatureSet.RACE_1, List.of(8), 8),
                Map.of());
        ModelFile.write(file, other);
        TrainingSettings settings =
                SmallRun.SETTINGS.with(Setting.TARGETS, "net").with(Setting.TARGET_NET, file.toString());
        Round taught = round(settings, 4, 2);
        Round plain = round(SmallRun.SETTINGS, 4, 2);
        NetworkEvaluator evaluator = new NetworkEvaluator(ModelFile.read(file));
        assertTrue(taught.race.size() > 0);
        for (Samples samples : List.of(taught.contact, taught.race)) {
            for (int i = 0; i < samples.size(); i++) {
                float[] expected = new float[Outcomes.COUNT];
                evaluator.evaluate(samples.planes(), i * Planes.STRIDE, expected, 0);
                int at = i * Outcomes.COUNT;
                assertArrayEquals(expected, Arrays.copyOfRange(samples.targets(), at, at + Outcomes.COUNT));
            }
        }
        int length = plain.contact.size() * Planes.STRIDE;
        assertEquals(plain.contact.size(), taught.contact.size());
        assertArrayEquals(
                Arrays.copyOf(plain.contact.planes(), length), Arrays.copyOf(taught.contact.planes(), length));
    }

    @Test
    void targetsOfNoNetAreRefused() {
        TrainingSettings settings = SmallRun.SETTINGS.with(Setting.TARGETS, "net");
        InvalidRunException e = assertThrows(InvalidRunException.class, () -> RunKnowledge.teacher(settings));
        assertEquals("targets = net needs a net: set target.net to a model file", e.getMessage());
    }

    /** Notes which samples it was given, and answers with a loss that depends on them. */
    private static final class Noting implements Learner {
        private final int[] times = new int[10_000];
        private int batches;
        private int smallest = Integer.MAX_VALUE;
        private int largest;
        private boolean shuffled;

        @Override
        public double fit(Samples samples, int[] order, int from, int to, double rate) {
            batches++;
            smallest = Math.min(smallest, to - from);
            largest = Math.max(largest, to - from);
            double sum = 0;
            for (int i = from; i < to; i++) {
                times[order[i]]++;
                sum += order[i];
                shuffled |= order[i] != i;
            }
            return sum / (to - from);
        }

        @Override
        public Network network() {
            throw new UnsupportedOperationException();
        }

        @Override
        public LearnerState state() {
            throw new UnsupportedOperationException();
        }

        @Override
        public void restore(LearnerState state) {
            throw new UnsupportedOperationException();
        }

        @Override
        public void close() {}
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 100, 1000, 1499, 100_000})
    void everySampleOnceInBatchesOfAboutOneSize(int batch) {
        int size = 1000;
        Samples samples = new Samples(size);
        for (int i = 0; i < size; i++) {
            samples.add(new int[Planes.STRIDE], 0, new float[Outcomes.COUNT], 0);
        }
        Noting learner = new Noting();
        double loss = Batches.fit(learner, samples, batch, 1, 0.1, Dice.ofGame(1, 1));
        for (int i = 0; i < learner.times.length; i++) {
            assertEquals(i < size ? 1 : 0, learner.times[i]);
        }
        assertEquals((size - 1) / 2.0, loss, 1e-9);
        assertEquals(Math.max(1, Math.round((double) size / batch)), learner.batches);
        assertTrue(learner.largest - learner.smallest <= 1);
        assertTrue(learner.shuffled);
    }

    @Test
    void passesGoThroughAllSamplesAgain() {
        Samples samples = new Samples(1000);
        for (int i = 0; i < 1000; i++) {
            samples.add(new int[Planes.STRIDE], 0, new float[Outcomes.COUNT], 0);
        }
        Noting learner = new Noting();
        double loss = Batches.fit(learner, samples, 100, 3, 0.1, Dice.ofGame(1, 1));
        for (int i = 0; i < 1000; i++) {
            assertEquals(3, learner.times[i]);
        }
        assertEquals(999 / 2.0, loss, 1e-9);
        assertEquals(30, learner.batches);
    }

    @Test
    void noSamplesNoStep() {
        Noting learner = new Noting();
        assertEquals(0, Batches.fit(learner, new Samples(1), 100, 1, 0.1, Dice.ofGame(1, 1)));
        assertEquals(0, learner.batches);
        assertFalse(learner.shuffled);
    }
}
