package org.pipwright.training.learner;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.deeplearning4j.nn.multilayer.MultiLayerNetwork;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.nd4j.linalg.factory.Nd4j;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.training.RandomGames;
import org.pipwright.training.reference.ReferenceNetwork;

/** What a network trained by Deeplearning4j would answer there, and what our own inference answers. */
class InferenceAgreementTest {
    private static final int POSITIONS = 10_000;
    private static final double TOLERANCE = 1e-5;

    /** Nets shipped with the tool: resources of a module that is built after this one. */
    private static final Path SHIPPED =
            Path.of("..", "models", "src", "main", "resources", "org", "pipwright", "models");

    /** Those of fully connected layers, which are all that the reference learner can build. */
    static List<Path> shipped() throws IOException {
        try (Stream<Path> files = Files.list(SHIPPED)) {
            return files.filter(file -> file.toString().endsWith(".safetensors"))
                    .filter(file -> ModelFile.read(file).net() instanceof Lanes)
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void shippedNets(Path file) {
        requireAgreement(ModelFile.read(file));
    }

    @Test
    void randomNets() {
        requireAgreement(new Model(
                InitialLayers.network(FeatureSet.CONTACT_1, List.of(100, 30), 3),
                InitialLayers.network(FeatureSet.RACE_1, List.of(17), 4),
                Map.of()));
    }

    private static void requireAgreement(Model model) {
        RandomGames games = new RandomGames(51);
        List<Position> contact = new ArrayList<>();
        List<Position> race = new ArrayList<>();
        for (int i = 0; i < POSITIONS; i++) {
            Position met = games.next();
            (met.contact() ? contact : race).add(met);
        }
        assertTrue(contact.size() > 1_000 && race.size() > 500, contact.size() + " and " + race.size());
        requireAgreement(model, model.contact(), contact);
        requireAgreement(model, model.race(), race);
    }

    private static void requireAgreement(Model model, Network network, List<Position> positions) {
        NetworkEvaluator ours = new NetworkEvaluator(model);
        float[] scores = scores(network, positions);
        float[] out = new float[Outcomes.COUNT];
        for (int i = 0; i < positions.size(); i++) {
            int[] planes = positions.get(i).toPlanes();
            ours.evaluate(planes, 0, out, 0);
            double[] expected = chances(scores, i * Outcomes.COUNT, PossibleOutcomes.of(planes, 0));
            for (int k = 0; k < Outcomes.COUNT; k++) {
                double apart = Math.abs(expected[k] - out[k]);
                assertTrue(apart <= TOLERANCE, positions.get(i) + ": outcome " + k + " apart by " + apart);
            }
        }
    }

    private static float[] scores(Network network, List<Position> positions) {
        FeatureSet features = network.features();
        float[] inputs = new float[positions.size() * features.inputs()];
        for (int i = 0; i < positions.size(); i++) {
            features.encode(positions.get(i).toPlanes(), 0, inputs, i * features.inputs());
        }
        MultiLayerNetwork theirs = ReferenceNetwork.of(network);
        return theirs.output(Nd4j.create(inputs, new long[] {positions.size(), features.inputs()}, 'c'))
                .dup('c')
                .data()
                .asFloat();
    }

    private static double[] chances(float[] scores, int at, int possible) {
        double[] chances = new double[Outcomes.COUNT];
        double sum = 0;
        for (int k = 0; k < chances.length; k++) {
            chances[k] = (possible >> k & 1) != 0 ? Math.exp(scores[at + k]) : 0;
            sum += chances[k];
        }
        for (int k = 0; k < chances.length; k++) {
            chances[k] /= sum;
        }
        return chances;
    }
}
