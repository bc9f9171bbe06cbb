package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Runs that learn from another net. */
class TargetNetTest {
    @TempDir
    Path folder;

    private TrainingSettings settings(Path net) {
        return SmallRun.SETTINGS.with(Setting.TARGETS, "net").with(Setting.TARGET_NET, net.toString());
    }

    /** The file may go or change once the run has begun: the run keeps its own. */
    @Test
    void stoppedAndResumedWithoutTheFileIsTheSameRun() throws IOException {
        Path net = folder.resolve("net.safetensors");
        ModelFile.write(
                net,
                new Model(
                        InitialLayers.network(FeatureSet.CONTACT_2, List.of(12), 31),
                        InitialLayers.network(FeatureSet.RACE_1, List.of(9), 32),
                        Map.of()));
        RunFolder whole = RunFolder.create(folder.resolve("whole"), settings(net));
        SmallRun.finish(whole, 1);
        RunFolder resumed = RunFolder.create(folder.resolve("resumed"), settings(net));
        Files.delete(net);
        SmallRun first = new SmallRun();
        TrainingRun.run(resumed, 2, first, ReportPage.NONE, first.after(2));
        SmallRun.finish(RunFolder.open(folder.resolve("resumed")), 2);
        assertEquals(
                ModelFile.read(whole.modelFile()).notes().get(ModelFile.SHA256),
                ModelFile.read(resumed.modelFile()).notes().get(ModelFile.SHA256));
    }

    @Test
    void aMissingNetIsRefusedBeforeAFolderIsMade() {
        Path net = folder.resolve("missing.safetensors");
        Path run = folder.resolve("run");
        TrainingSettings settings = settings(net);
        InvalidRunException e = assertThrows(InvalidRunException.class, () -> RunFolder.create(run, settings));
        assertEquals("target.net: no model file '" + net + "': check the path", e.getMessage());
        assertFalse(Files.exists(run));
    }
}
