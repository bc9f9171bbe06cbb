package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.training.settings.Preset;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

class TrainCommandTest {
    private static final String SMALL = "contact.hidden = 16\nrace.hidden = 16\nround = 16\nevaluation.games = 20\n";

    @TempDir
    Path folder;

    @Test
    void trainsResumesAndRefusesToOverwrite() throws IOException {
        Path settings = Files.writeString(folder.resolve("small.settings"), SMALL);
        Path out = folder.resolve("run");
        String[] start = {"train", "--settings", settings.toString(), "--games", "40", "--out", out.toString()};
        Run first = Run.of(start);
        assertEquals(0, first.code(), first.err());
        Path net = out.resolve("net.safetensors");
        assertEquals(net + "\n", first.out());
        assertEquals("40", ModelFile.read(net).notes().get("games"));
        assertTrue(Files.readString(out.resolve("report.html")).contains("Opening plays"));

        Run again = Run.of(start);
        assertEquals(2, again.code());
        assertTrue(again.err().contains("is not empty: give --resume"), again.err());

        Run longer = Run.of("train", "--resume", "--games", "60", "--out", out.toString());
        assertEquals(0, longer.code(), longer.err());
        assertEquals("60", ModelFile.read(net).notes().get("games"));
        assertTrue(Files.readString(out.resolve("settings.txt")).contains("games = 60"));
    }

    @Test
    void printedSettingsAreAFileThatTrainTakes() throws IOException {
        Run printed = Run.of("train", "--print-settings", "--games", "16", "--seed", "7");
        assertEquals(0, printed.code());
        assertTrue(printed.out().contains("seed = 7") && printed.out().contains("games = 16"), printed.out());
        Path file = Files.writeString(
                folder.resolve("printed"), printed.out().replace("256,32", "16").replace("= 200\n", "= 2\n"));
        Run run = Run.of(
                "train",
                "--settings",
                file.toString(),
                "--out",
                folder.resolve("out").toString());
        assertEquals(0, run.code(), run.err());
    }

    @Test
    void presetsAreBegunWithAndCanBeChanged() throws IOException {
        Run printed = Run.of("train", "--preset", "evening", "--print-settings");
        assertEquals(0, printed.code(), printed.err());
        assertEquals("# Preset evening.\n\n" + Preset.EVENING.settings().toText(), printed.out());

        Path settings = Files.writeString(folder.resolve("small.settings"), SMALL + "seed = 5\n");
        Path out = folder.resolve("run");
        Run run = Run.of(
                "train",
                "--preset",
                "overnight",
                "--settings",
                settings.toString(),
                "--games",
                "16",
                "--out",
                out.toString());
        assertEquals(0, run.code(), run.err());
        TrainingSettings expected = Preset.OVERNIGHT
                .settings()
                .with(Setting.CONTACT_HIDDEN, "16")
                .with(Setting.RACE_HIDDEN, "16")
                .with(Setting.ROUND, "16")
                .with(Setting.EVALUATION_GAMES, "20")
                .with(Setting.SEED, "5")
                .with(Setting.GAMES, "16")
                .with(Setting.MINUTES, "0");
        assertEquals(expected, TrainingSettings.read(out.resolve("settings.txt")));
        Path manifest = out.resolve("run.txt");
        assertTrue(Files.readString(manifest).startsWith("preset = overnight\n"), Files.readString(manifest));

        assertEquals(
                0,
                Run.of("train", "--resume", "--games", "32", "--out", out.toString())
                        .code());
        assertEquals(1, Files.readString(manifest).split("preset").length - 1);
    }

    /** Shells offer the presets there are. */
    @Test
    void presetsAreOffered() {
        assertTrue(
                Run.of("completion", "bash")
                        .out()
                        .contains("(\"" + String.join("\" \"", Preset.names()) + "\" \"deep\" \"slim\")"),
                "the list in TrainCommand is not that of Preset");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "train --games 10 | say where the run goes: --out FOLDER",
                "train --out OUT | say how long to train: --games N, --minutes M, --hours H or --preset NAME",
                "train --out OUT --minutes 1 --hours 1 | give --minutes or --hours, not both",
                "train --out OUT --games 10 --threads 0 | --threads is 0: use 1 to 1024",
                "train --out OUT --games 10 --threads 100000 | --threads is 100000: use 1 to 1024",
                "train --out OUT --games -1 | games must be a whole number from 0 to 1000000000000, not '-1'",
                "train --out OUT --preset weekend | there is no preset 'weekend': use evening or overnight",
                "train --print-settings --preset Evening | there is no preset 'Evening': use evening or overnight",
                "train --out OUT --resume --preset evening | leave those options out",
                "train --out OUT --resume | leave --resume out to start one",
                "train --out OUT --device abacus --games 1 | there is no device 'abacus': use cpu, threads or cuda",
                "train --out OUT --device cuda --games 1 | a run with --device cuda ends by time: give --minutes or --hours",
                "train --device cuda --minutes 1 | say where the run goes: --out FOLDER",
                "train --out OUT --device cuda --preset deep | the trainer for --device cuda is not on the class path",
                "train --out OUT --settings OUT --games 1 | train --print-settings writes a file to start from"
            })
    void mistakesGetOneLine(String line, String expected) {
        String path = folder.resolve("none").toString();
        Run run = Run.of(line.replace("OUT", path).split(" "));
        assertEquals(2, run.code());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains(expected), run.err());
    }
}
