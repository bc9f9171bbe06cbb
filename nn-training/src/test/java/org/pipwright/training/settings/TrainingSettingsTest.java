package org.pipwright.training.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

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
        setting.facts().require(setting.facts().byDefault());
        assertFalse(setting.facts().comment().isEmpty());
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
        assertEquals(List.of(128, 32), settings.networks().contactHidden());
        assertEquals(0.5, settings.learning().rate().first());
        assertEquals(Long.MIN_VALUE, settings.seed());
        assertEquals(12, settings.limits().games());
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
                "random.openings = 1.01 | line 3: random.openings must be a number from 0 to 1, not '1.01'",
                "constant.share = 1 | line 3: constant.share must be a number from 0 to 0.99, not '1'",
                "minutes = 1000001 | line 3: minutes must be a number from 0 to 1000000, not '1000001'",
                "evaluation.seconds = 0 | line 3: evaluation.seconds must be a number from 1 to 1000000, not '0'",
                "rate.first = NaN | line 3: rate.first must be a number from 0 to 1, not 'NaN'",
                "rate.first = fast | line 3: rate.first must be a number from 0 to 1, not 'fast'",
                "start.net = a\0b | line 3: start.net must be a path or none, not 'a b'",
                "rate.first = 0x1p-3 | line 3: rate.first must be a number from 0 to 1, not '0x1p-3'",
                "rate.first = 0.5f | line 3: rate.first must be a number from 0 to 1, not '0.5f'",
                "rate.first = \u0661 | line 3: rate.first must be a number from 0 to 1, not '\u0661'",
                "games = \u0663 | line 3: games must be a whole number from 0 to 1000000000000, not '\u0663'",
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

    /** Whatever a line has too much of is not repeated. */
    @ParameterizedTest
    @ValueSource(strings = {"X", "X = 1", "games = X"})
    void longLinesAreQuotedShortly(String line) {
        assertTrue(refused(line.replace("X", "x".repeat(5000))).length() < 200);
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void aDeviceWithoutAnEndIsRefused() {
        String message = assertThrows(InvalidSettingsException.class, () -> TrainingSettings.read(Path.of("/dev/zero")))
                .getMessage();
        assertEquals(
                "'/dev/zero' is not a settings file (it has more than 65,536 bytes): train --print-settings writes one to"
                        + " start from",
                message);
    }

    /** Files of earlier versions, whose names for some settings were others. */
    @ParameterizedTest
    @CsvSource({
        "varied, 0.1, RANDOM_OPENINGS, random.openings",
        "most.turns, 300, MAX_TURNS, max.turns",
        "rollout.rolls, 5, ROLLOUT_TRUNCATION, rollout.truncation",
        "keep, 0.5, SAMPLE_SHARE, sample.share",
        "passes, 2, EPOCHS, epochs",
        "hold, 0.1, CONSTANT_SHARE, constant.share",
        "gauge.games, 4000, EVALUATION_GAMES, evaluation.games",
        "gauge.seconds, 30, EVALUATION_SECONDS, evaluation.seconds"
    })
    void oldNamesAreReadAndTheNewOneIsSaid(String old, String value, Setting setting, String now) throws IOException {
        Path file = folder.resolve("old.txt");
        Files.writeString(file, "seed = 5\n" + old + " = " + value + "\n");
        List<String> said = new ArrayList<>();
        TrainingSettings settings = TrainingSettings.read(file, TrainingSettings.defaults(), said::add);
        assertEquals(value, settings.text(setting));
        assertEquals(List.of("'" + file + "': line 2: '" + old + "' is now called " + now), said);
        assertEquals(settings, parse(settings.toText()));
        assertTrue(settings.toText().contains("\n" + now + " = " + value + "\n"));
        assertEquals(
                "line 2: " + now + " was already set in line 1",
                refused(old + " = " + value + "\n" + now + " = " + value + "\n"));
    }

    @Test
    void choicesAreTyped() {
        TrainingSettings settings = parse("targets = net\ntarget.net = a/b\nopening = any\nends = tables\n"
                + "samples = one-side\nlearner = reference\nlambda.first = 1\nlambda.last = 0.5\nconstant.share = 0.5");
        assertEquals(new TargetSettings(TargetKind.NET, Optional.of(Path.of("a/b")), 36, 7), settings.targets());
        assertEquals(new GameSettings(15, OpeningRoll.ANY, 0, GameEnd.TABLES, 2000), settings.games());
        assertEquals(new SampleSettings(SampledPositions.ONE_SIDE, 1), settings.samples());
        assertEquals(LearnerKind.REFERENCE, settings.learning().learner());
        assertEquals(Optional.empty(), settings.networks().start());
        Fall lambda = settings.learning().lambda();
        assertEquals(1, lambda.at(0.5));
        assertEquals(0.75, lambda.at(0.75));
        assertEquals(0.5, lambda.at(1));
    }

    @Test
    void filesAreNamed() throws IOException {
        Path file = folder.resolve("run.txt");
        Files.writeString(file, "seed = x\n");
        String message = assertThrows(InvalidSettingsException.class, () -> TrainingSettings.read(file))
                .getMessage();
        assertTrue(message.startsWith("'" + file + "': line 1: seed must be"), message);

        Files.writeString(file, "seed = 5\n");
        assertEquals(5, TrainingSettings.read(file).seed());
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
