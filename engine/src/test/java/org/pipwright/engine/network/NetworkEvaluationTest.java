package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.regime.RandomBoards;
import org.pipwright.engine.roll.Roll;

/** Every way of evaluating gives what a plain forward pass in double precision gives. */
class NetworkEvaluationTest {
    private static final int ROLLS = 2_500;
    private static final double MAX_ERROR = 2e-6;
    private static final double P99_ERROR = 6e-7;

    /** Both kernels with shapes that fill vectors and shapes that do not. */
    static Stream<Arguments> networks() {
        List<Kernel> kernels = List.of(Kernel.plain(), VectorForTests.kernel());
        List<Network> shapes = List.of(
                RandomNetworks.of(FeatureSet.CONTACT_1, 1, 64, 16),
                RandomNetworks.of(FeatureSet.CONTACT_1, 2, 13),
                RandomNetworks.of(FeatureSet.CONTACT_1, 3, 37, 1),
                RandomNetworks.of(FeatureSet.CONTACT_1, 4, 70, 33, 9),
                RandomNetworks.of(FeatureSet.CONTACT_2, 7, 64, 16),
                RandomNetworks.of(FeatureSet.CONTACT_2, 8, 37),
                RandomNetworks.of(FeatureSet.RACE_1, 5, 48, 16),
                RandomNetworks.of(FeatureSet.RACE_1, 6, 1));
        return kernels.stream().flatMap(kernel -> shapes.stream()
                .map(network -> Arguments.of(kernel.getClass().getSimpleName(), network.shape(), kernel, network)));
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("networks")
    void scratchAndSiblingsAgreeWithTheDefinition(String name, String shape, Kernel kernel, Network network) {
        NetworkEvaluation evaluation = new NetworkEvaluation(network, kernel);
        PlayGenerator generator = new PlayGenerator();
        SplittableRandom random = new SplittableRandom(11);
        ChanceErrors scratch = new ChanceErrors(MAX_ERROR, P99_ERROR);
        ChanceErrors siblings = new ChanceErrors(MAX_ERROR, P99_ERROR);
        RandomBoards.of(91, ROLLS).forEach(board -> {
            int high = random.nextInt(1, 7);
            int count = Math.min(generator.generate(board.toPlanes(), 0, high, random.nextInt(1, high + 1)), 9);
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
            for (int i = 0; i < count; i++) {
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

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("networks")
    void siblingsMayShareNothingWithTheirBase(String name, String shape, Kernel kernel, Network network) {
        NetworkEvaluation evaluation = new NetworkEvaluation(network, kernel);
        ChanceErrors errors = new ChanceErrors(MAX_ERROR, P99_ERROR);
        // All 30 checkers somewhere else: the most rows of places; and blots that face each other: many rows of pairs.
        List<NaiveBoard> boards = RandomBoards.of(92, 60).collect(Collectors.toList());
        boards.add(stacks(24, 24));
        boards.add(stacks(23, 22));
        boards.add(blots(1));
        boards.add(blots(2));
        for (NaiveBoard base : boards) {
            evaluation.begin(base.toPlanes(), 0);
            for (NaiveBoard board : boards) {
                float[] out = new float[Outcomes.COUNT];
                evaluation.evaluateSiblings(board.toPlanes(), 1, out);
                errors.add(NaiveForward.chances(network, board.toPlanes(), 0), out, 0);
            }
        }
        errors.require(name + " " + shape + " unrelated");
    }

    /** Twelve or thirteen places a side that all face each other: blots from point 13 on, the rest on the bar. */
    private static NaiveBoard blots(int first) {
        int[] me = new int[NaiveBoard.PLACES];
        int[] them = new int[NaiveBoard.PLACES];
        for (int place = 25 - first; place > 12; place--) {
            me[place] = 1;
            them[place] = 1;
        }
        me[NaiveBoard.BAR] = 2 + first;
        them[NaiveBoard.BAR] = 2 + first;
        return NaiveBoard.of(me, them);
    }

    private static NaiveBoard stacks(int mine, int theirs) {
        int[] me = new int[NaiveBoard.PLACES];
        int[] them = new int[NaiveBoard.PLACES];
        me[mine] = 15;
        them[theirs] = 15;
        return NaiveBoard.of(me, them);
    }

    /** Groups of sixteen: how many siblings there are, in which order, and what was evaluated before, changes nothing. */
    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("networks")
    void siblingsDoNotDependOnEachOther(String name, String shape, Kernel kernel, Network network) {
        NetworkEvaluation used = new NetworkEvaluation(network, kernel);
        for (NaiveBoard board : RandomBoards.of(93, 6).collect(Collectors.toList())) {
            int[] base = board.swapped().toPlanes();
            int[] planes = resultsOfAllRolls(board);
            int size = Math.min(70, planes.length / Planes.STRIDE);
            used.begin(base, 0);
            float[] all = new float[size * Outcomes.COUNT];
            used.evaluateSiblings(planes, size, all);
            for (int count : new int[] {0, 1, 4, 15, 16, 17, size}) {
                NetworkEvaluation fresh = new NetworkEvaluation(network, kernel);
                fresh.begin(base, 0);
                int last = Math.min(count, size);
                for (int i = last - 1; i >= 0; i--) {
                    float[] one = new float[Outcomes.COUNT];
                    fresh.evaluateSiblings(
                            Arrays.copyOfRange(planes, i * Planes.STRIDE, (i + 1) * Planes.STRIDE), 1, one);
                    assertArrayEquals(
                            Arrays.copyOfRange(all, i * Outcomes.COUNT, (i + 1) * Outcomes.COUNT),
                            one,
                            board::toString);
                }
                float[] some = new float[all.length];
                fresh.evaluateSiblings(planes, last, some);
                float[] expected = Arrays.copyOf(all, all.length);
                Arrays.fill(expected, last * Outcomes.COUNT, all.length, 0);
                assertArrayEquals(expected, some, board::toString);
            }
        }
    }

    /** What a side's plays may lead to, as the opponent sees it: whole rolls one after another. */
    private static int[] resultsOfAllRolls(NaiveBoard board) {
        PlayGenerator generator = new PlayGenerator();
        int[] all = new int[0];
        for (Roll roll : Roll.all()) {
            int count = generator.generate(board.toPlanes(), 0, roll.high(), roll.low());
            int from = all.length;
            all = Arrays.copyOf(all, from + count * Planes.STRIDE);
            for (int i = 0; i < count; i++) {
                Planes.copySwapped(generator.results(), i * Planes.STRIDE, all, from + i * Planes.STRIDE);
            }
        }
        return all;
    }
}
