package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Position;
import org.pipwright.training.report.Evaluation;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** That it learns at all, measured against a fixed opponent that a random network loses to. */
class LearningTest {
    private static final int EVALUATION_GAMES = 400;

    @TempDir
    Path folder;

    private static Evaluation evaluation(Model model) {
        return Evaluations.of(
                model,
                new RunKnowledge(TrainingSettings.defaults(), TableFolder.ofUser(System.getenv()), 2, Optional.empty()),
                Optional.empty(),
                Position.start(),
                EVALUATION_GAMES,
                0,
                2);
    }

    @Test
    void threeThousandGamesBeatPips() {
        TrainingSettings settings = TrainingSettings.defaults()
                .with(Setting.GAMES, "3000")
                .with(Setting.SEED, "3")
                .with(Setting.CONTACT_HIDDEN, "64")
                .with(Setting.RACE_HIDDEN, "16")
                .with(Setting.ROUND, "64")
                .with(Setting.BATCH, "512")
                .with(Setting.EVALUATION_GAMES, "2");
        Evaluation before;
        try (Crew<Integer> workers = Crew.numbered(1);
                Learners learners = new Learners(settings, true, workers)) {
            before = evaluation(learners.model(Map.of()));
        }
        SmallRun.finish(folder.resolve("run"), settings, 2);
        Evaluation after =
                evaluation(ModelFile.read(RunFolder.open(folder.resolve("run")).modelFile()));
        assertTrue(before.points() < 0, before.toString());
        assertTrue(after.points() > 1, after.toString());
    }
}
