package org.pipwright.engine.files;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    @TempDir
    Path folder;

    @Test
    void aFileThatFitsIsReadWhole() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "\u00e9t\u00e9");
        assertEquals("\u00e9t\u00e9", WholeFile.text(file, 5));
        assertArrayEquals(Files.readAllBytes(file), WholeFile.bytes(file, 100));
        assertEquals("", WholeFile.text(Files.createFile(folder.resolve("empty")), 0));
    }

    @Test
    void aLargerOneIsRefused() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "12345");
        FileSystemException e = assertThrows(FileSystemException.class, () -> WholeFile.bytes(file, 4));
        assertEquals("it has more than 4 bytes", e.getReason());
        assertEquals(file.toString(), e.getFile());
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void aDeviceWithoutAnEndIsRefused() {
        assertThrows(FileSystemException.class, () -> WholeFile.text(Path.of("/dev/zero"), 1 << 16));
    }

    @Test
    void whatIsNoTextOrNotThereIsTold() throws IOException {
        Path file = Files.write(folder.resolve("file"), new byte[] {'a', (byte) 0xc3});
        assertThrows(CharacterCodingException.class, () -> WholeFile.text(file, 10));
        assertThrows(NoSuchFileException.class, () -> WholeFile.text(folder.resolve("none"), 10));
    }
}
