package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.regime.RandomBoards;

/** Residual networks, by both kernels, against a forward pass in double precision; and each position on its own. */
class ResidualEvaluationTest {
    private static final double MAX_ERROR = 5e-6;
    private static final double P99_ERROR = 1e-6;

    static Stream<Arguments> networks() {
        List<Kernel> kernels = List.of(Kernel.plain(), VectorForTests.kernel());
        List<ResidualNetwork> networks = List.of(
                RandomNetworks.residual(FeatureSet.PLACES_1, 1, 32, 1),
                RandomNetworks.residual(FeatureSet.PLACES_1, 2, 64, 3),
                RandomNetworks.residual(FeatureSet.PLACES_1, 3, 96, 2).halved(),
                RandomNetworks.residual(FeatureSet.CONTACT_2, 4, 32, 2));
        return kernels.stream().flatMap(kernel -> networks.stream()
                .map(network -> Arguments.of(kernel.getClass().getSimpleName(), network.shape(), kernel, network)));
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("networks")
    void scratchAndSiblingsAgreeWithTheDefinition(String name, String shape, Kernel kernel, ResidualNetwork network) {
        ResidualEvaluation evaluation = new ResidualEvaluation(network, kernel);
        PlayGenerator generator = new PlayGenerator();
        SplittableRandom random = new SplittableRandom(12);
        ChanceErrors scratch = new ChanceErrors(MAX_ERROR, P99_ERROR);
        ChanceErrors siblings = new ChanceErrors(MAX_ERROR, P99_ERROR);
        RandomBoards.of(94, 400).forEach(board -> {
            int high = random.nextInt(1, 7);
            int count = generator.generate(board.toPlanes(), 0, high, random.nextInt(1, high + 1));
            int[] children = new int[count * Planes.STRIDE];
            for (int i = 0; i < count; i++) {
                Planes.copySwapped(generator.results(), i * Planes.STRIDE, children, i * Planes.STRIDE);
            }
            // No more room than the chances need, between two cells that must stay.
            float[] out = new float[count * Outcomes.COUNT];
            evaluation.begin(board.swapped().toPlanes(), 0);
            evaluation.evaluateSiblings(children, count, out);
            float[] one = new float[Outcomes.COUNT + 2];
            Arrays.fill(one, Float.NaN);
            for (int i = 0; i < count; i += 1 + count / 5) {
                double[] expected = NaiveForward.chances(network, children, i * Planes.STRIDE);
                evaluation.evaluate(children, i * Planes.STRIDE, one, 1);
                siblings.add(expected, out, i * Outcomes.COUNT);
                scratch.add(expected, one, 1);
                assertEquals(Float.NaN, one[0]);
                assertEquals(Float.NaN, one[one.length - 1]);
            }
        });
        scratch.require(name + " " + shape + " scratch");
        siblings.require(name + " " + shape + " siblings");
    }

    /** Up to more than two groups: how many siblings there are, and what was evaluated before, changes no bit. */
    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("networks")
    void siblingsDoNotDependOnEachOther(String name, String shape, Kernel kernel, ResidualNetwork network) {
        int most = 107;
        List<NaiveBoard> boards = RandomBoards.of(95, most).toList();
        int[] planes = new int[most * Planes.STRIDE];
        for (int i = 0; i < most; i++) {
            System.arraycopy(boards.get(i).toPlanes(), 0, planes, i * Planes.STRIDE, Planes.STRIDE);
        }
        ResidualEvaluation evaluation = new ResidualEvaluation(network, kernel);
        evaluation.begin(planes, 0);
        float[] all = new float[most * Outcomes.COUNT];
        evaluation.evaluateSiblings(planes, most, all);
        for (int count = 0; count <= most; count += count < 20 ? 1 : 7) {
            float[] some = new float[all.length];
            ResidualEvaluation fresh = new ResidualEvaluation(network, kernel);
            fresh.begin(planes, 0);
            fresh.evaluateSiblings(planes, count, some);
            float[] expected = Arrays.copyOf(all, all.length);
            Arrays.fill(expected, count * Outcomes.COUNT, all.length, 0);
            assertArrayEquals(expected, some);
        }
    }

    @Test
    void shapesThatDoNotFitAreRefused() {
        ResidualNetwork good = RandomNetworks.residual(FeatureSet.PLACES_1, 1, 32, 1);
        assertEquals("residual 32 x 1", good.shape());
        assertEquals(264 * 32 + 32 + 2 * (32 * 32 + 32) + 32 * 6 + 6, good.weights());
        Layer narrow = RandomNetworks.layer(new SplittableRandom(1), 264, 20);
        Layer square = good.blocks().get(0).a();
        requireRefused("a multiple of 32, not 20", narrow, good.blocks(), good.output());
        requireRefused("at least one block", good.input(), List.of(), good.output());
        requireRefused("input layer is 32 by 32, not 264 by 32", square, good.blocks(), good.output());
        requireRefused("output layer is 32 by 32, not 32 by 6", good.input(), good.blocks(), square);
        requireRefused(
                "a block's second layer is 32 by 6, not 32 by 32",
                good.input(),
                List.of(new ResidualNetwork.Block(square, good.output())),
                good.output());
    }

    private static void requireRefused(String part, Layer input, List<ResidualNetwork.Block> blocks, Layer output) {
        String message = assertThrows(
                        InvalidModelException.class,
                        () -> new ResidualNetwork(FeatureSet.PLACES_1, input, blocks, output))
                .getMessage();
        assertEquals(true, message.contains(part), message);
    }
}
