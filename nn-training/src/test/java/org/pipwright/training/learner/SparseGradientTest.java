package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.deeplearning4j.nn.multilayer.MultiLayerNetwork;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.nd4j.linalg.api.ndarray.INDArray;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.VectorForTests;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.RandomGames;
import org.pipwright.training.reference.ReferenceLearner;
import org.pipwright.training.reference.ReferenceNetwork;
import org.pipwright.training.selfplay.Samples;

/** Our learner against Deeplearning4j: the same gradient, and after some steps the same weights. */
class SparseGradientTest {
    private static final int BATCH = 300;

    static Stream<Arguments> networks() {
        return Stream.of(
                Arguments.of(FeatureSet.CONTACT_1, List.of(40)),
                Arguments.of(FeatureSet.CONTACT_1, List.of(64, 20)),
                Arguments.of(FeatureSet.CONTACT_1, List.of(33, 16, 7)),
                Arguments.of(FeatureSet.CONTACT_2, List.of(40, 16)),
                Arguments.of(FeatureSet.RACE_1, List.of(48)),
                Arguments.of(FeatureSet.RACE_1, List.of(32, 16)));
    }

    private static Samples samples(FeatureSet features, int count) {
        Samples samples = new RandomGames(21).samples(count, features != FeatureSet.RACE_1);
        int masked = 0;
        for (int i = 0; i < count; i++) {
            masked += PossibleOutcomes.of(samples.planes(), i * Planes.STRIDE) == PossibleOutcomes.ALL ? 0 : 1;
        }
        assertTrue(masked > 10 && (masked < count || features == FeatureSet.RACE_1), masked + " masked samples");
        return samples;
    }

    /** A network away from the start, so that no gradient is nearly 0 by symmetry. */
    private static Network trained(FeatureSet features, List<Integer> hidden, Samples samples, int[] order) {
        try (Crew<Integer> workers = Crew.numbered(1);
                SparseLearner learner = new SparseLearner(InitialLayers.network(features, hidden, 11), 0, workers)) {
            for (int step = 0; step < 5; step++) {
                learner.fit(samples, order, 0, BATCH, 0.01);
            }
            return learner.network();
        }
    }

    @ParameterizedTest
    @MethodSource("networks")
    void gradients(FeatureSet features, List<Integer> hidden) {
        Samples samples = samples(features, 2 * BATCH);
        int[] order = new RandomGames(22).order(2 * BATCH);
        Network start = trained(features, hidden, samples, order);
        MultiLayerNetwork theirs = ReferenceNetwork.of(start);
        theirs.setInput(ReferenceLearner.inputs(features, samples, order, 100, 100 + BATCH));
        theirs.setLabels(ReferenceLearner.labels(samples, order, 100, 100 + BATCH));
        theirs.computeGradientAndScore();
        for (LayerKernel kernel :
                new LayerKernel[] {new PlainLayerKernel(), VectorForTests.required(LayerKernel.vectorOrNull())}) {
            try (Crew<Integer> workers = Crew.numbered(2);
                    SparseLearner ours = new SparseLearner(start, 0, workers, kernel)) {
                double loss = ours.gradients(samples, order, 100, 100 + BATCH) / BATCH;
                assertEquals(theirs.score(), loss, 1e-5 * loss);
                for (int l = 0; l < start.layers().size(); l++) {
                    assertSameGradient(theirs, l, ours.takeGradient(l, BATCH));
                }
            }
        }
    }

    /** Every element within 1e-4 of the largest of its layer, and the whole within 1e-5 of its length. */
    private static void assertSameGradient(MultiLayerNetwork theirs, int l, float[] ours) {
        INDArray weights = theirs.gradient().getGradientFor(l + "_W");
        INDArray biases = theirs.gradient().getGradientFor(l + "_b");
        float[] w = weights.dup('c').data().asFloat();
        float[] b = biases.dup('c').data().asFloat();
        assertEquals(w.length + b.length, ours.length);
        double[] expected = new double[ours.length];
        double largest = 0;
        double squares = 0;
        double apart = 0;
        for (int i = 0; i < ours.length; i++) {
            // Theirs is a sum over the batch, which their updater divides.
            expected[i] = (i < w.length ? w[i] : b[i - w.length]) / BATCH;
            largest = Math.max(largest, Math.abs(expected[i]));
            squares += expected[i] * expected[i];
            apart += (expected[i] - ours[i]) * (expected[i] - ours[i]);
        }
        for (int i = 0; i < ours.length; i++) {
            assertEquals(expected[i], ours[i], 1e-4 * largest, "layer " + l + ", element " + i);
        }
        assertTrue(Math.sqrt(apart / squares) < 1e-5, "layer " + l + " apart by " + Math.sqrt(apart / squares));
    }

    static Stream<Arguments> withoutPairs() {
        return networks().filter(network -> ((FeatureSet) network.get()[0]).pairs() == 0);
    }

    /** Without pairs, whose weights theirs moves in every step and ours when they come up ({@link PairStepsTest}). */
    @ParameterizedTest
    @MethodSource("withoutPairs")
    void twentySteps(FeatureSet features, List<Integer> hidden) {
        Samples samples = samples(features, 4 * BATCH);
        int[] order = new RandomGames(23).order(4 * BATCH);
        Network start = InitialLayers.network(features, hidden, 31);
        try (Crew<Integer> workers = Crew.numbered(2);
                SparseLearner ours = new SparseLearner(start, 0, workers);
                ReferenceLearner theirs = new ReferenceLearner(start)) {
            for (int step = 0; step < 20; step++) {
                int from = step % 4 * BATCH;
                double rate = 0.002 * (20 - step) / 20;
                double expected = theirs.fit(samples, order, from, from + BATCH, rate);
                double loss = ours.fit(samples, order, from, from + BATCH, rate);
                assertEquals(expected, loss, 1e-4 * expected, "step " + step);
            }
            assertSameSteps(start, theirs.network(), ours.network());
        }
    }

    /** What the weights have moved by differs little against what they have moved. */
    private static void assertSameSteps(Network start, Network theirs, Network ours) {
        for (int l = 0; l < start.layers().size(); l++) {
            float[] from = start.layers().get(l).weights();
            float[] expected = theirs.layers().get(l).weights();
            float[] found = ours.layers().get(l).weights();
            double moved = 0;
            double apart = 0;
            for (int i = 0; i < from.length; i++) {
                moved += Math.pow(expected[i] - from[i], 2);
                apart += Math.pow(expected[i] - found[i], 2);
            }
            double share = Math.sqrt(apart / moved);
            assertTrue(moved > 0 && share < 1e-4, "layer " + l + " apart by " + share);
        }
    }
}
