package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.training.RandomGames;
import org.pipwright.training.reference.ReferenceLearner;
import org.pipwright.training.selfplay.Samples;

/** The same bits for any number of threads, and across a state taken and given back. */
class SparseThreadsTest {
    private static final int SAMPLES = 1_000;

    private final Samples samples = new RandomGames(41).samples(SAMPLES, true);
    private final int[] order = new RandomGames(42).order(SAMPLES);

    // Its first layer is large enough to be updated in parts, the others are not.
    private final Network start = InitialLayers.network(FeatureSet.CONTACT_2, List.of(64, 20), 7);

    /** Odd sizes of batches, down to fewer samples than shares. */
    private List<Double> fit(SparseLearner learner, int from) {
        List<Double> losses = new ArrayList<>();
        int at = from;
        for (int size : new int[] {333, 1, 15, 17, 100}) {
            losses.add(learner.fit(samples, order, at, at + size, 0.002));
            at += size;
        }
        return losses;
    }

    private static void assertSame(LearnerState expected, LearnerState found) {
        assertEquals(expected.steps(), found.steps());
        assertEquals(expected.arrays().size(), found.arrays().size());
        for (int i = 0; i < expected.arrays().size(); i++) {
            assertArrayEquals(expected.arrays().get(i), found.arrays().get(i));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 5})
    void threads(int count) {
        try (Crew<Integer> one = Crew.numbered(1);
                Crew<Integer> many = Crew.numbered(count);
                SparseLearner alone = new SparseLearner(start, 0, one);
                SparseLearner shared = new SparseLearner(start, 0, many)) {
            for (int repeat = 0; repeat < 3; repeat++) {
                assertEquals(fit(alone, 100 * repeat), fit(shared, 100 * repeat));
            }
            assertSame(alone.state(), shared.state());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 3, 1_000})
    void statesAreCopiesToGoOnFrom(long averaged) {
        Network other = InitialLayers.network(FeatureSet.CONTACT_2, List.of(64, 20), 8);
        try (Crew<Integer> workers = Crew.numbered(2);
                SparseLearner through = new SparseLearner(start, averaged, workers);
                SparseLearner resumed = new SparseLearner(other, averaged, workers)) {
            fit(through, 0);
            LearnerState halfway = through.state();
            List<Double> losses = fit(through, 300);
            resumed.restore(halfway);
            assertEquals(losses, fit(resumed, 300));
            assertSame(through.state(), resumed.state());
            assertArrayEquals(
                    through.network().layers().get(0).weights(),
                    resumed.network().layers().get(0).weights());
        }
    }

    @Test
    void statesOfOtherShapesAreRefused() {
        try (Crew<Integer> workers = Crew.numbered(1);
                SparseLearner learner = new SparseLearner(start, 0, workers)) {
            for (List<Integer> hidden : List.of(List.of(64), List.of(64, 40), List.of(20, 64))) {
                try (SparseLearner other =
                        new SparseLearner(InitialLayers.network(FeatureSet.CONTACT_2, hidden, 8), 0, workers)) {
                    LearnerState state = other.state();
                    assertThrows(IllegalArgumentException.class, () -> learner.restore(state));
                }
            }
        }
    }

    @Test
    void theReferenceGoesOnFromItsStateToo() {
        try (ReferenceLearner through = new ReferenceLearner(start);
                ReferenceLearner resumed =
                        new ReferenceLearner(InitialLayers.network(FeatureSet.CONTACT_2, List.of(64, 20), 8))) {
            for (int step = 0; step < 5; step++) {
                through.fit(samples, order, 100 * step, 100 * step + 100, 0.002);
            }
            resumed.restore(through.state());
            for (int step = 5; step < 10; step++) {
                double loss = through.fit(samples, order, 100 * step, 100 * step + 100, 0.001);
                assertEquals(loss, resumed.fit(samples, order, 100 * step, 100 * step + 100, 0.001));
            }
            assertSame(through.state(), resumed.state());
            LearnerState cut = new LearnerState(1, through.state().arrays().subList(0, 1));
            assertThrows(IllegalArgumentException.class, () -> resumed.restore(cut));
        }
    }
}
