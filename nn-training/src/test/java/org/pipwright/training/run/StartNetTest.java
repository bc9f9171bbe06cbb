package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.training.RandomGames;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Runs that begin with a net from a file. */
class StartNetTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void write() throws IOException {
        file = folder.resolve("start.safetensors");
        ModelFile.write(
                file,
                new Model(
                        InitialLayers.network(FeatureSet.CONTACT_1, List.of(20, 8), 3),
                        InitialLayers.network(FeatureSet.RACE_1, List.of(12), 4),
                        Map.of()));
    }

    private TrainingSettings settings(String features, String hidden) {
        return TrainingSettings.defaults()
                .with(Setting.START_NET, file.toString())
                .with(Setting.CONTACT_FEATURES, features)
                .with(Setting.CONTACT_HIDDEN, hidden)
                .with(Setting.RACE_HIDDEN, "12");
    }

    @ParameterizedTest
    @CsvSource({"contact-1, 270-20-8-6", "contact-2, 1570-20-8-6"})
    void aRunBeginsWithTheNetsAnswers(String features, String shape) {
        Model start = Learners.start(settings(features, "20,8"));
        assertEquals(shape, start.contact().shape());
        NetworkEvaluator expected = new NetworkEvaluator(ModelFile.read(file));
        NetworkEvaluator found = new NetworkEvaluator(start);
        RandomGames games = new RandomGames(71);
        for (int i = 0; i < 500; i++) {
            Position position = games.next();
            float[] one = new float[Outcomes.COUNT];
            float[] other = new float[Outcomes.COUNT];
            expected.evaluate(position.toPlanes(), 0, one, 0);
            found.evaluate(position.toPlanes(), 0, other, 0);
            assertArrayEquals(one, other, 1e-6f, position::toString);
        }
    }

    @ParameterizedTest
    @CsvSource({"race-1, '20,8', 262-20-8-6", "contact-1, 20, 270-20-6", "contact-2, '8,20', 1570-8-20-6"})
    void anotherShapeIsRefused(String features, String hidden, String wanted) {
        TrainingSettings settings = settings(features, hidden);
        InvalidRunException e = assertThrows(InvalidRunException.class, () -> Learners.start(settings));
        assertEquals(
                "start.net '" + file + "' is contact 270-20-8-6, race 262-12-6, but the settings ask for contact "
                        + wanted
                        + ", race 262-12-6: set contact.features, contact.hidden and race.hidden to what it has",
                e.getMessage());
    }

    @Test
    void aNetWithPairsBeginsNoRunWithoutThem() throws IOException {
        Model model = ModelFile.read(file);
        ModelFile.write(file, new Model(InitialLayers.withPairs(model.contact()), model.race(), Map.of()));
        TrainingSettings settings = settings("contact-1", "20,8");
        assertThrows(InvalidRunException.class, () -> Learners.start(settings));
    }
}
