package org.pipwright.engine.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Part files go with their process, at the latest when the folder is next looked through. */
@Tag("fast")
class PartFileTest {
    private static final String NAME = ".a.01234567-89ab-cdef-0123-456789abcdef.part";

    @TempDir
    Path folder;

    private List<Path> parts() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".part")).toList();
        }
    }

    private static void old(Path file) throws IOException {
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().minusSeconds(60)));
    }

    private Process holder(String how) throws IOException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx64m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        HeldPart.class.getName(),
                        folder.resolve("table").toString(),
                        how)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        BufferedReader out = process.inputReader();
        assertEquals("ready", out.readLine());
        return process;
    }

    /** As long as its process lives it is left alone, however old it looks; killed, it is removed. */
    @Test
    void thoseOfAKilledProcessAreRemoved() throws Exception {
        Process process = holder("kept");
        try {
            Path part = parts().get(0);
            old(part);
            PartFile.removeAbandoned(folder);
            assertEquals(List.of(part), parts());
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertEquals(1, parts().size());
        PartFile.removeAbandoned(folder);
        assertEquals(List.of(), parts());
    }

    /** A process that is told to end takes its file with it where that was asked for. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aSignalRemovesThoseThatAreDiscarded() throws Exception {
        Process process = holder("discarded");
        assertEquals(1, parts().size());
        process.destroy();
        process.waitFor();
        assertEquals(List.of(), parts());
    }

    @Test
    void thoseOfThisProcessAndNewOnesAndOtherFilesStay() throws IOException {
        Path fresh = Files.createFile(folder.resolve(NAME));
        Path other = Files.createFile(folder.resolve(".a.part"));
        old(other);
        Path target = folder.resolve("a");
        try (PartFile part = PartFile.of(target).discardedAtExit()) {
            for (Path file : parts()) {
                if (!file.equals(fresh)) {
                    old(file);
                }
            }
            PartFile.removeAbandoned(folder);
            assertEquals(3, parts().size());
            part.channel().write(ByteBuffer.wrap(new byte[] {1, 2, 3}));
            part.become(target);
        }
        assertEquals(3, Files.size(target));
        old(fresh);
        PartFile.removeAbandoned(folder);
        assertEquals(List.of(other), parts());
        PartFile.removeAbandoned(folder.resolve("missing"));
    }

    /** Whoever locks it uses it, in this process too, though the part file is none of ours. */
    @Test
    void oneThatIsLockedStays() throws IOException {
        Path part = Files.createFile(folder.resolve(NAME));
        old(part);
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
            channel.lock();
            PartFile.removeAbandoned(folder);
            assertEquals(List.of(part), parts());
        }
        PartFile.removeAbandoned(folder);
        assertEquals(List.of(), parts());
    }

    /** One sees what it was to become, as long as the whole name fits. */
    @Test
    void namesThatFitAreRepeated() throws IOException {
        for (int length : List.of(1, 120, 121)) {
            String name = "x".repeat(length);
            PartFile part = PartFile.of(folder.resolve(name));
            List<Path> there = parts();
            part.close();
            String begin = length <= 120 ? "." + name + "." : ".pipwright.";
            assertTrue(there.get(0).getFileName().toString().startsWith(begin), there::toString);
        }
    }

    /** Each has a name of its own, so that two who write the same file do not disturb each other. */
    @Test
    void twoForOneTarget() throws IOException {
        Path target = folder.resolve("a");
        AtomicFile.write(target, outer -> {
            outer.write(new byte[100_000]);
            outer.flush();
            AtomicFile.write(target, inner -> inner.write(1));
            assertEquals(1, Files.size(target));
            outer.write(2);
        });
        assertEquals(100_001, Files.size(target));
        assertEquals(List.of(), parts());
    }

    /** The longest names that file systems allow, in bytes: 255. */
    @Test
    void longNames() throws IOException {
        for (String name : List.of("x".repeat(250), "x".repeat(229), "\u00e4".repeat(120))) {
            Path target = folder.resolve(name);
            AtomicFile.write(target, out -> out.write(7));
            assertTrue(Files.exists(target));
        }
        assertFalse(parts().iterator().hasNext());
    }
}
