package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.training.RandomGames;
import org.pipwright.training.selfplay.Samples;

/** Averaged weights against a mean of the weights that a learner without averaging has after each step. */
class AverageTest {
    private static final int STEPS = 12;

    private final Samples samples = new RandomGames(41).samples(1_000, true);
    private final int[] order = new RandomGames(42).order(1_000);
    private final Network start = InitialLayers.network(FeatureSet.CONTACT_2, List.of(64, 20), 7);

    /** A plain mean while there are fewer steps than are averaged over, an exponential one from there on. */
    @ParameterizedTest
    @ValueSource(longs = {1, 4, 100})
    void isTheMeanOfTheWeights(long averaged) {
        try (Crew<Integer> workers = Crew.numbered(2);
                SparseLearner plain = new SparseLearner(start, 0, workers);
                SparseLearner averaging = new SparseLearner(start, averaged, workers)) {
            double[][] mean = new double[3][];
            for (int step = 1; step <= STEPS; step++) {
                plain.fit(samples, order, 80 * step - 80, 80 * step, 0.01);
                averaging.fit(samples, order, 80 * step - 80, 80 * step, 0.01);
                double share = step <= averaged ? 1.0 / step : 1.0 / averaged;
                for (int l = 0; l < mean.length; l++) {
                    float[] weights = plain.network().layers().get(l).weights();
                    mean[l] = mean[l] == null ? new double[weights.length] : mean[l];
                    for (int i = 0; i < weights.length; i++) {
                        mean[l][i] += share * (weights[i] - mean[l][i]);
                    }
                }
            }
            for (int l = 0; l < mean.length; l++) {
                Layer found = averaging.network().layers().get(l);
                for (int i = 0; i < mean[l].length; i++) {
                    assertEquals(mean[l][i], found.weights()[i], 1e-6);
                }
            }
            assertArrayEquals(
                    plain.state().arrays().get(0), averaging.state().arrays().get(0), "steps go from the weights");
        }
    }

    @Test
    void aStateWithoutAveragesIsRefused() {
        try (Crew<Integer> workers = Crew.numbered(1);
                SparseLearner plain = new SparseLearner(start, 0, workers);
                SparseLearner averaging = new SparseLearner(start, 10, workers)) {
            LearnerState state = plain.state();
            assertThrows(IllegalArgumentException.class, () -> averaging.restore(state));
        }
    }
}
