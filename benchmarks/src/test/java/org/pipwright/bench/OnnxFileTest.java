package org.pipwright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ai.onnxruntime.OnnxTensor;
import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtException;
import ai.onnxruntime.OrtSession;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.match.RandomPlayer;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.NetworkEvaluation;
import org.pipwright.engine.network.OnnxFile;
import org.pipwright.engine.network.ResidualEvaluation;
import org.pipwright.engine.network.ResidualNetwork;
import org.pipwright.engine.network.SiblingEvaluation;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.PossibleOutcomes;

/** ONNX Runtime reads what we write, and gets the chances that we get. */
class OnnxFileTest {
    private static final int POSITIONS = 10_000;
    private static final double TOLERANCE = 1e-5;

    @TempDir
    Path folder;

    /** A network: what it is called, what it reads, how it becomes a file, how we evaluate it. */
    private record Case(
            String shape,
            FeatureSet features,
            Function<Map<String, String>, byte[]> file,
            SiblingEvaluation evaluation) {
        static Case of(Network network) {
            return new Case(
                    network.shape(),
                    network.features(),
                    notes -> OnnxFile.toBytes(network, notes),
                    new NetworkEvaluation(network));
        }

        static Case of(ResidualNetwork network) {
            return new Case(
                    network.shape(),
                    network.features(),
                    notes -> OnnxFile.toBytes(network, notes),
                    new ResidualEvaluation(network));
        }

        @Override
        public String toString() {
            return shape;
        }
    }

    static Stream<Case> networks() {
        return Stream.of(
                Case.of(BenchNetworks.contact()),
                Case.of(BenchNetworks.race()),
                Case.of(BenchNetworks.residual(96, 3).halved()));
    }

    /** The race network too is asked about every position: whether it makes sense there does not matter here. */
    @ParameterizedTest
    @MethodSource("networks")
    void sameChances(Case network) throws IOException, OrtException {
        List<Position> positions = BenchPositions.play(new RandomPlayer(), POSITIONS, 21);
        int[] planes = BenchPositions.planes(positions);
        float[][] features = new float[POSITIONS][network.features().inputs()];
        float[][] possible = new float[POSITIONS][Outcomes.COUNT];
        int masked = 0;
        for (int i = 0; i < POSITIONS; i++) {
            network.features().encode(planes, i * Planes.STRIDE, features[i], 0);
            int mask = PossibleOutcomes.of(planes, i * Planes.STRIDE);
            masked += mask != PossibleOutcomes.ALL ? 1 : 0;
            for (int k = 0; k < Outcomes.COUNT; k++) {
                possible[i][k] = mask >> k & 1;
            }
        }
        assertTrue(masked > 500, masked + " positions with an impossible outcome");
        Path file = folder.resolve("net.onnx");
        Files.write(file, network.file().apply(Map.of("run", "a test")));
        requireSame(network, planes, run(file, features, possible));
    }

    private static float[][] run(Path file, float[][] features, float[][] possible) throws OrtException {
        OrtEnvironment environment = OrtEnvironment.getEnvironment();
        try (OrtSession session = environment.createSession(file.toString());
                OnnxTensor x = OnnxTensor.createTensor(environment, features);
                OnnxTensor mask = OnnxTensor.createTensor(environment, possible);
                OrtSession.Result result = session.run(Map.of(OnnxFile.FEATURES, x, OnnxFile.POSSIBLE, mask))) {
            return (float[][]) result.get(OnnxFile.CHANCES).orElseThrow().getValue();
        }
    }

    private static void requireSame(Case network, int[] planes, float[][] theirs) {
        float[] ours = new float[Outcomes.COUNT];
        double[] errors = new double[POSITIONS];
        for (int i = 0; i < POSITIONS; i++) {
            network.evaluation().evaluate(planes, i * Planes.STRIDE, ours, 0);
            int mask = PossibleOutcomes.of(planes, i * Planes.STRIDE);
            for (int k = 0; k < Outcomes.COUNT; k++) {
                errors[i] = Math.max(errors[i], Math.abs(ours[k] - theirs[i][k]));
                assertTrue((mask & 1 << k) != 0 || theirs[i][k] == 0, "an impossible outcome gets exactly 0");
            }
        }
        Arrays.sort(errors);
        String report = String.format(
                "%s in ONNX Runtime: %d positions, max error %.2g, p99 %.2g",
                network.shape(), POSITIONS, errors[POSITIONS - 1], errors[POSITIONS * 99 / 100]);
        System.out.println(report);
        assertTrue(errors[POSITIONS - 1] <= TOLERANCE, report);
    }

    @ParameterizedTest
    @MethodSource("networks")
    void fileSaysWhatItIs(Case network) throws OrtException {
        byte[] bytes = network.file().apply(Map.of("run", "a test"));
        try (OrtSession session = OrtEnvironment.getEnvironment().createSession(bytes)) {
            assertEquals(Set.of(OnnxFile.FEATURES, OnnxFile.POSSIBLE), session.getInputNames());
            assertEquals(Set.of(OnnxFile.CHANCES), session.getOutputNames());
            Map<String, String> metadata = session.getMetadata().getCustomMetadata();
            assertEquals("a test", metadata.get("run"));
            assertEquals(network.features().label(), metadata.get("features"));
            assertEquals("pipwright", session.getMetadata().getProducerName());
        }
    }
}
