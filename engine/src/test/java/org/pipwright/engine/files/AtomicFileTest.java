package org.pipwright.engine.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file is written whole or not at all, and nothing else is left behind. */
@Tag("fast")
class AtomicFileTest {
    @TempDir
    Path folder;

    private static AtomicFile.Content text(String text) {
        return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).collect(Collectors.toList());
        }
    }

    @Test
    void writesAndReplaces() throws IOException {
        Path file = folder.resolve("a.txt");
        AtomicFile.write(file, text("one"));
        assertEquals("one", Files.readString(file));
        AtomicFile.write(file, text("two"));
        assertEquals("two", Files.readString(file));
        assertEquals(List.of("a.txt"), names());
    }

    @Test
    void largeContentArrivesWhole() throws IOException {
        Path file = folder.resolve("large");
        byte[] block = new byte[100_003];
        Arrays.fill(block, (byte) 7);
        AtomicFile.write(file, out -> {
            for (int i = 0; i < 50; i++) {
                out.write(block);
            }
        });
        assertEquals(50L * block.length, Files.size(file));
    }

    @Test
    void failingHalfwayLeavesTheOldContent() throws IOException {
        Path file = folder.resolve("a.txt");
        AtomicFile.write(file, text("old"));
        IOException full = new IOException("no space left");
        IOException thrown = assertThrows(
                IOException.class,
                () -> AtomicFile.write(file, out -> {
                    out.write(new byte[1 << 20]);
                    throw full;
                }));
        assertSame(full, thrown);
        assertThrows(
                IllegalStateException.class,
                () -> AtomicFile.write(file, out -> {
                    throw new IllegalStateException("a bug while writing");
                }));
        assertEquals("old", Files.readString(file));
        assertEquals(List.of("a.txt"), names());
    }

    @Test
    void interruptedThreadLeavesTheOldContent() throws IOException {
        Path file = folder.resolve("a.txt");
        AtomicFile.write(file, text("old"));
        Thread.currentThread().interrupt();
        try {
            assertThrows(IOException.class, () -> AtomicFile.write(file, text("new")));
        } finally {
            assertTrue(Thread.interrupted(), "the interrupt is still to be seen");
        }
        assertEquals("old", Files.readString(file));
        assertEquals(List.of("a.txt"), names());
    }

    /** While the content is written, a reader still sees the old one. */
    @Test
    void readerNeverSeesHalf() throws IOException {
        Path file = folder.resolve("a.txt");
        AtomicFile.write(file, text("old"));
        AtomicFile.write(file, out -> {
            out.write(new byte[1 << 20]);
            out.flush();
            assertEquals("old", Files.readString(file));
        });
        assertEquals(1 << 20, Files.size(file));
    }

    @Test
    void missingFolder() throws IOException {
        NoSuchFileException thrown = assertThrows(
                NoSuchFileException.class, () -> AtomicFile.write(folder.resolve("none/a.txt"), text("x")));
        assertEquals(folder.resolve("none").toString(), thrown.getFile());
        assertFalse(Files.exists(folder.resolve("none")));
        assertEquals(List.of(), names());
    }

    @Test
    void folderInTheWay() throws IOException {
        Files.createDirectories(folder.resolve("a/b"));
        assertThrows(IOException.class, () -> AtomicFile.write(folder.resolve("a"), text("x")));
        assertTrue(Files.isDirectory(folder.resolve("a/b")));
        assertEquals(List.of("a"), names());
    }

    @Test
    void permissionsAreThoseOfAnyNewFile() throws IOException {
        Assumptions.assumeTrue(
                FileSystems.getDefault().supportedFileAttributeViews().contains("posix"), "no permissions here");
        Path written = folder.resolve("written");
        AtomicFile.write(written, text("x"));
        Path created = Files.createFile(folder.resolve("created"));
        assertEquals(Files.getPosixFilePermissions(created), Files.getPosixFilePermissions(written));
    }
}
