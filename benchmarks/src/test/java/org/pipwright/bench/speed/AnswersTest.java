package org.pipwright.bench.speed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ai.onnxruntime.OrtException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.features.Measures;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.network.NaiveForward;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/** Every method that is measured, run once, gives the right answer. */
class AnswersTest {
    private static final double TOLERANCE = 1e-5;

    private final Siblings siblings = new Siblings();
    private final Network network = BenchNetworks.contact();

    @ParameterizedTest
    @ValueSource(strings = {"random", "net"})
    void generate(String play) {
        PlayGeneratorBenchmark benchmark = new PlayGeneratorBenchmark();
        benchmark.play = play;
        benchmark.prepare();
        List<Position> positions = play.equals("net") ? BenchPositions.netPlay() : BenchPositions.randomPlay();
        int expected =
                positions.parallelStream().mapToInt(AnswersTest::countNaively).sum();
        PlayGeneratorBenchmark.Resulting resulting = new PlayGeneratorBenchmark.Resulting();
        assertEquals(expected, benchmark.generate(resulting));
        assertEquals(expected, resulting.positions);
        System.out.printf("%s play: %d results of %d rolls%n", play, expected, 21 * positions.size());
    }

    private static int countNaively(Position position) {
        int count = 0;
        for (int die = 1; die <= 6; die++) {
            for (int other = die; other <= 6; other++) {
                count += NaivePlayGenerator.generate(NaiveBoard.ofPlanes(position.toPlanes(), 0), die, other)
                        .results()
                        .size();
            }
        }
        return count;
    }

    @Test
    void encode() {
        FeatureBenchmark benchmark = new FeatureBenchmark();
        benchmark.prepare();
        float[] inputs = benchmark.encode();
        List<Position> positions = BenchPositions.netPlay();
        int width = FeatureSet.CONTACT_1.inputs();
        for (int i = 0; i < positions.size(); i++) {
            Position position = positions.get(i);
            // The second of a place's five inputs says whether a point is held; pips come first of the extras.
            for (int place = 1; place <= 25; place++) {
                assertEquals(position.count(place) >= 2 ? 1 : 0, inputs[i * width + 5 * place + 1]);
            }
            assertEquals(position.pips() / 167f, inputs[i * width + FeatureSet.PLACE_INPUTS], 1e-6);
        }
    }

    @Test
    void extras() {
        FeatureBenchmark benchmark = new FeatureBenchmark();
        benchmark.prepare();
        float[] extras = benchmark.extras();
        List<Position> positions = BenchPositions.netPlay();
        int width = FeatureSet.CONTACT_1.extras();
        for (int i = 0; i < positions.size(); i++) {
            int[] planes = positions.get(i).toPlanes();
            assertEquals(positions.get(i).pips() / 167f, extras[i * width], 1e-6);
            assertEquals(positions.get(i).opponentPips() / 167f, extras[i * width + width / 2], 1e-6);
            assertEquals(Measures.hittingRolls(planes, 0, Planes.SIDE) / 36f, extras[i * width + 1], 1e-6);
        }
    }

    @Test
    void workIsWhatItSays() {
        assertEquals(
                Siblings.COUNT,
                siblings.groups().stream().mapToInt(Siblings.Group::size).sum());
        double mean = (double) Siblings.COUNT / siblings.groups().size();
        assertTrue(mean > 10 && mean < 40, "mean size of a group: " + mean);
        for (int i = 0; i < Siblings.COUNT; i++) {
            assertTrue(Planes.contact(siblings.planes(), i * Planes.STRIDE));
        }
    }

    /** Plain or vector, both methods; the kernel is this JVM's, and the engine's tests compare the two. */
    @Test
    void ours() {
        requireChances(new PlainInferenceBenchmark().scratch());
        requireChances(new VectorInferenceBenchmark().incremental());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 20, 1000})
    void onnxRuntime(int batch) throws OrtException {
        OnnxRuntimeBenchmark benchmark = new OnnxRuntimeBenchmark();
        benchmark.batch = batch;
        benchmark.prepare();
        requireChances(benchmark.run());
        benchmark.close();
    }

    /** Ours and the peer's, which share nothing but the file. */
    @ParameterizedTest
    @ValueSource(ints = {6, 20, 420})
    void deep(int batch) throws OrtException {
        DeepBenchmark benchmark = new DeepBenchmark();
        benchmark.net = "64x2";
        benchmark.batch = batch;
        benchmark.prepare();
        float[] ours = benchmark.ours().clone();
        assertArrayEquals(benchmark.onnxRuntime(), ours, 1e-5f);
        assertTrue(ours[0] > 0 && ours[ours.length - 1] > 0);
        benchmark.close();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 20, 1000})
    void deeplearning4j(int batch) {
        Dl4jBenchmark benchmark = new Dl4jBenchmark();
        benchmark.batch = batch;
        benchmark.prepare();
        float[] scores = benchmark.output();
        for (int i = 0; i < Siblings.COUNT; i++) {
            double[] expected = NaiveForward.scores(network, siblings.planes(), i * Planes.STRIDE);
            for (int k = 0; k < Outcomes.COUNT; k++) {
                assertEquals(expected[k], scores[i * Outcomes.COUNT + k], TOLERANCE * (1 + Math.abs(expected[k])));
            }
        }
    }

    private void requireChances(float[] found) {
        for (int i = 0; i < Siblings.COUNT; i++) {
            double[] expected = NaiveForward.chances(network, siblings.planes(), i * Planes.STRIDE);
            for (int k = 0; k < Outcomes.COUNT; k++) {
                assertEquals(expected[k], found[i * Outcomes.COUNT + k], TOLERANCE);
            }
        }
    }
}
