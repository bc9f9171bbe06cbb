package org.pipwright.engine.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file for readers that want one: the same again and again, in memory where the system has a folder there. */
public final class ScratchFile {
    private static final Path MEMORY = Path.of("/dev/shm");

    private final Path path;

    /** A file of its own. */
    public ScratchFile() {
        try {
            path = Files.isDirectory(MEMORY)
                    ? Files.createTempFile(MEMORY, "pipwright-", ".fuzz")
                    : Files.createTempFile("pipwright-", ".fuzz");
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        path.toFile().deleteOnExit();
    }

    /** The file with such bytes in it. */
    public Path with(byte[] data) throws IOException {
        return Files.write(path, data);
    }
}
