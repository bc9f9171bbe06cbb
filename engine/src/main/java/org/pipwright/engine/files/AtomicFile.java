package org.pipwright.engine.files;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Writes whole files or nothing: into a temporary file in the same folder, forced to disk, then renamed over the target.
 * A crash or a full disk leaves the old file as it was.
 */
public final class AtomicFile {
    private AtomicFile() {}

    /** What to write. */
    @FunctionalInterface
    public interface Content {
        /**
         * Writes the content.
         *
         * @param out buffered stream, closed by the caller
         * @throws IOException if writing fails
         */
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * Writes a file.
     *
     * @param target the file; its folder must exist
     * @param content what to write
     * @throws IOException if the folder is missing, the disk full or the like; the target is then as before
     */
    public static void write(Path target, Content content) throws IOException {
        Path folder = target.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new NoSuchFileException(folder.toString());
        }
        try (PartFile part = PartFile.of(target)) {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(part.channel()), 1 << 16);
            content.writeTo(out);
            out.flush();
            part.channel().force(true);
            part.become(target);
        }
    }
}
