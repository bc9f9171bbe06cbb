package org.pipwright.training.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PresetTest {
    @ParameterizedTest
    @EnumSource
    void settingsAreValidAndEnd(Preset preset) {
        TrainingSettings settings = preset.settings();
        assertNotEquals(TrainingSettings.defaults(), settings);
        assertTrue(settings.limits().any());
        assertSame(preset, Preset.named(preset.words()));
    }

    @Test
    void theTimesArePromised() {
        assertEquals(20, Preset.EVENING.settings().limits().minutes());
        assertEquals(480, Preset.OVERNIGHT.settings().limits().minutes());
    }

    @Test
    void othersAreRefused() {
        assertEquals(
                "there is no preset 'night': use evening or overnight",
                assertThrows(InvalidSettingsException.class, () -> Preset.named("night"))
                        .getMessage());
    }

    @Test
    void fileChangesWhatItNames(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("my.settings"), "minutes = 3\n");
        assertEquals(
                Preset.EVENING.settings().with(Setting.MINUTES, "3"),
                TrainingSettings.read(file, Preset.EVENING.settings()));
    }
}
