package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.training.settings.TrainingSettings;

/** Which checkpoints are kept, which is gone back to, and which folders are refused. */
class RunFolderTest {
    @TempDir
    Path temporary;

    private Path path() {
        return temporary.resolve("run");
    }

    private RunFolder create() {
        return RunFolder.create(path(), TrainingSettings.defaults());
    }

    private List<String> checkpoints() throws IOException {
        try (Stream<Path> files = Files.list(path())) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.startsWith("checkpoint"))
                    .map(name -> name.replaceAll("checkpoint-0*|\\.state", ""))
                    .sorted()
                    .toList();
        }
    }

    private void damage(int round) throws IOException {
        Path file = path().resolve(String.format(Locale.ROOT, "checkpoint-%012d.state", round));
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length / 2] ^= 4;
        Files.write(file, bytes);
    }

    private static String refused(org.junit.jupiter.api.function.Executable doing) {
        String message = assertThrows(InvalidRunException.class, doing).getMessage();
        assertFalse(message.contains("\n"), message);
        return message;
    }

    @Test
    void onlyTheNewestThreeAreKept() throws IOException {
        RunFolder folder = create();
        assertNull(folder.newest(Assertions::fail));
        for (int round : new int[] {1, 2, 9, 10, 300}) {
            folder.write(Checkpoints.small(round));
            assertEquals(round, folder.newest(Assertions::fail).round());
        }
        assertEquals(List.of("10", "300", "9"), checkpoints());
    }

    @Test
    void damagedOnesAreWarnedOfAndLeftAside() throws IOException {
        RunFolder folder = create();
        for (int round = 1; round <= 3; round++) {
            folder.write(Checkpoints.small(round));
        }
        damage(3);
        List<String> warnings = new ArrayList<>();
        assertEquals(2, folder.newest(warnings::add).round());
        assertEquals(1, warnings.size());
        String warning = warnings.get(0);
        assertTrue(warning.contains("000003.state' is unusable (damaged: its checksum is wrong)"), warning);
        assertTrue(warning.endsWith("going back to the one before"), warning);

        damage(2);
        assertEquals(1, folder.newest(warnings::add).round());
        assertEquals(3, warnings.size());
        damage(1);
        assertTrue(refused(() -> folder.newest(warnings::add)).contains("is usable"));
    }

    /** Having gone back, the run writes rounds below those of damaged files, which must not push out the new ones. */
    @Test
    void damagedOnesMakeRoom() throws IOException {
        RunFolder folder = create();
        for (int round : new int[] {100, 200, 300}) {
            folder.write(Checkpoints.small(round));
        }
        damage(300);
        damage(200);
        folder.write(Checkpoints.small(110));
        folder.write(Checkpoints.small(120));
        assertEquals(List.of("100", "110", "120"), checkpoints());
        assertEquals(120, folder.newest(Assertions::fail).round());
    }

    @Test
    void createRefusesAFolderInUse() throws IOException {
        create();
        String message = refused(this::create);
        assertTrue(message.contains("is not empty: give --resume"), message);
        Path file = Files.createFile(temporary.resolve("file"));
        assertTrue(refused(() -> RunFolder.create(file, TrainingSettings.defaults()))
                .contains("cannot use the folder"));
    }

    @Test
    void createTakesAnEmptyFolderAndWhatAKilledStartLeft() throws IOException {
        Files.createDirectories(path());
        Files.createFile(path().resolve(".settings.txt.d2f1.part"));
        RunFolder folder = create();
        assertEquals(TrainingSettings.defaults(), folder.settings());
    }

    @Test
    void openSweepsUpWhatAKilledRunLeft() throws IOException {
        create();
        Path leftover = Files.createFile(path().resolve(".checkpoint-000000000001.state.d2f1.part"));
        RunFolder.open(path());
        assertFalse(Files.exists(leftover));
    }

    @Test
    void openRefusesAFolderWithoutARun() {
        for (Path folder : List.of(temporary, temporary.resolve("none"))) {
            String message = refused(() -> RunFolder.open(folder));
            assertTrue(message.contains("there is no run in '" + folder + "' to resume"), message);
        }
    }

    /** Digits in file names are the same everywhere. */
    @Test
    void otherDigitsDoNotMatter() throws IOException {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
        try {
            RunFolder folder = create();
            folder.write(Checkpoints.small(12));
            assertEquals(12, folder.newest(Assertions::fail).round());
        } finally {
            Locale.setDefault(before);
        }
    }
}
