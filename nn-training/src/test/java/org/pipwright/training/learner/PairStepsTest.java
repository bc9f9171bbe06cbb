package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Planes;
import org.pipwright.training.RandomGames;
import org.pipwright.training.selfplay.Samples;

/** Steps of the first layer, of batches in several shares, by Adam's rule weight by weight: each step for most, and for a pair's where a sample has it. */
class PairStepsTest {
    private static final FeatureSet SET = FeatureSet.CONTACT_2;
    private static final int BATCH = 200;
    private static final int UNITS = 24;
    private static final double RATE = 0.01;

    private final Samples samples = new RandomGames(61).samples(5_000, true);
    private final int[] order = new RandomGames(62).order(5_000);

    private boolean[] had(int from) {
        boolean[] had = new boolean[SET.inputs()];
        float[] inputs = new float[SET.inputs()];
        for (int i = from; i < from + BATCH; i++) {
            SET.encode(samples.planes(), order[i] * Planes.STRIDE, inputs, 0);
            for (int input = 0; input < had.length; input++) {
                had[input] |= inputs[input] != 0;
            }
        }
        return had;
    }

    @Test
    void aPairWaitsForASampleThatHasIt() {
        Network start = InitialLayers.network(SET, List.of(UNITS), 5);
        Layer first = start.layers().get(0);
        float[] expected = first.weights().clone();
        float[] mean = new float[expected.length];
        float[] square = new float[expected.length];
        int waited = 0;
        try (Crew<Integer> workers = Crew.numbered(2);
                SparseLearner learner = new SparseLearner(start, 0, workers);
                SparseLearner gradients = new SparseLearner(start, 0, workers)) {
            for (int step = 1; step <= 20; step++) {
                int from = BATCH * step;
                gradients.restore(learner.state());
                gradients.gradients(samples, order, from, from + BATCH);
                float[] gradient = gradients.takeGradient(0, BATCH);
                boolean[] had = had(from);
                for (int input = 0; input < SET.inputs(); input++) {
                    if (input < SET.inputs() - SET.pairs() || had[input]) {
                        int at = input * UNITS;
                        float rate = Adam.corrected(RATE, step);
                        Adam.update(expected, mean, square, gradient, at, at + UNITS, rate);
                    } else {
                        waited++;
                    }
                }
                learner.fit(samples, order, from, from + BATCH, RATE);
                assertArrayEquals(expected, learner.network().layers().get(0).weights(), 1e-5f, "step " + step);
            }
        }
        assertTrue(waited > 20 * SET.pairs() / 5, waited + " rows waited");
    }
}
