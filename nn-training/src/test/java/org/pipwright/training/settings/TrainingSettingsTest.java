package org.pipwright.training.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The settings file: what it takes, and what it says of what it does not take. */
class TrainingSettingsTest {
    @TempDir
    Path folder;

    private static TrainingSettings parse(String text) {
        return TrainingSettings.parse(text, TrainingSettings.defaults());
    }

    private static String refused(String text) {
        String message =
                assertThrows(InvalidSettingsException.class, () -> parse(text)).getMessage();
        assertFalse(message.contains("\n"), message);
        return message;
    }

    @Test
    void emptyFileGivesTheDefaults() {
        assertEquals(TrainingSettings.defaults(), parse(""));
        assertEquals(TrainingSettings.defaults(), parse("\n  # nothing here\n\n"));
        assertEquals("", TrainingSettings.defaults().differences());
    }

    @ParameterizedTest
    @EnumSource
    void defaultsAreTaken(Setting setting) {
        setting.require(setting.byDefault());
        assertFalse(setting.comment().isEmpty());
    }

    @Test
    void textLeadsBack() {
        TrainingSettings changed = TrainingSettings.defaults()
                .with(Setting.GAMES, "1000000")
                .with(Setting.CONTACT_HIDDEN, "128,32,8")
                .with(Setting.RATE_FIRST, "1e-3")
                .with(Setting.SEED, "-7")
                .with(Setting.OPENING, "any");
        assertEquals(changed, parse(changed.toText()));
        assertEquals(changed, parse(changed.toText().replace("\n", "\r\n")));
        assertNotEquals(TrainingSettings.defaults(), changed);
        assertEquals(
                "games=1000000; seed=-7; opening=any; contact.hidden=128,32,8; rate.first=1e-3", changed.differences());
    }

    @Test
    void valuesByKind() {
        TrainingSettings settings = parse(
                "contact.hidden=128,32 # two layers\n  rate.first   =  0.5  \nseed = -9223372036854775808\ngames=12");
        assertEquals(List.of(128, 32), settings.sizes(Setting.CONTACT_HIDDEN));
        assertEquals(0.5, settings.number(Setting.RATE_FIRST));
        assertEquals(Long.MIN_VALUE, settings.whole(Setting.SEED));
        assertEquals(12, settings.whole(Setting.GAMES));
        assertEquals("sparse", settings.text(Setting.LEARNER));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "no.such = 1 | line 3: there is no setting 'no.such': train --print-settings lists them",
                "GAMES = 1 | line 3: there is no setting 'GAMES': train --print-settings lists them",
                "= 1 | line 3: there is no setting '': train --print-settings lists them",
                "games | line 3: expected 'key = value', found 'games'",
                "seed = 2 | line 3: seed was already set in line 2",
                "games = 1.5 | line 3: games must be a whole number from 0 to 1000000000000, not '1.5'",
                "games = -1 | line 3: games must be a whole number from 0 to 1000000000000, not '-1'",
                "games = 1000000000001 | line 3: games must be a whole number from 0 to 1000000000000, not '1000000000001'",
                "games = | line 3: games must be a whole number from 0 to 1000000000000, not ''",
                "varied = 1.01 | line 3: varied must be a number from 0 to 1, not '1.01'",
                "hold = 1 | line 3: hold must be a number from 0 to 0.99, not '1'",
                "minutes = 1000001 | line 3: minutes must be a number from 0 to 1000000, not '1000001'",
                "gauge.seconds = 0 | line 3: gauge.seconds must be a number from 1 to 1000000, not '0'",
                "rate.first = NaN | line 3: rate.first must be a number from 0 to 1, not 'NaN'",
                "rate.first = fast | line 3: rate.first must be a number from 0 to 1, not 'fast'",
                "checkers = 4 | line 3: checkers must be 15 or 2 or 3, not '4'",
                "learner = best | line 3: learner must be sparse or reference, not 'best'",
                "race.hidden = 0 | line 3: race.hidden must be one to four sizes from 1 to 4096, such as 256,32, not '0'",
                "race.hidden = 64, | line 3: race.hidden must be one to four sizes from 1 to 4096, such as 256,32, not '64,'",
                "race.hidden = 1,2,3,4,5 | line 3: race.hidden must be one to four sizes from 1 to 4096, such as 256,32, not '1,2,3,4,5'",
                "race.hidden = 4097 | line 3: race.hidden must be one to four sizes from 1 to 4096, such as 256,32, not '4097'"
            })
    void refusals(String line, String message) {
        assertEquals(message, refused("# a comment\nseed = 1\n" + line + "\n"));
    }

    @Test
    void filesAreNamed() throws IOException {
        Path file = folder.resolve("run.txt");
        Files.writeString(file, "seed = x\n");
        String message = assertThrows(InvalidSettingsException.class, () -> TrainingSettings.read(file))
                .getMessage();
        assertTrue(message.startsWith("'" + file + "': line 1: seed must be"), message);

        Files.writeString(file, "seed = 5\n");
        assertEquals(5, TrainingSettings.read(file).whole(Setting.SEED));
    }

    @Test
    void whatIsNoSettingsFile() throws IOException {
        Path missing = folder.resolve("none.txt");
        Path large = folder.resolve("large.txt");
        Path binary = folder.resolve("binary.txt");
        Files.write(large, new byte[1 << 17]);
        Files.write(binary, new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1});
        for (Path file : List.of(missing, large, binary, folder)) {
            String message = assertThrows(InvalidSettingsException.class, () -> TrainingSettings.read(file))
                    .getMessage();
            assertTrue(message.contains("'" + file + "'") && !message.contains("\n"), message);
        }
    }
}
