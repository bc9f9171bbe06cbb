package org.pipwright.bench.kills;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;

/** A disk in memory (tmpfs of Linux), whose size is chosen and can be changed. */
final class Disk implements AutoCloseable {
    /** What files take at least, in bytes. */
    static final long PAGE = 4096;

    private final Path at;

    /** Mounts a disk of so many bytes on a folder, which is made; at least a page, which is then taken, so that nothing is free. */
    Disk(Path at, long bytes) throws IOException {
        this.at = Files.createDirectories(at);
        run("mount", "-t", "tmpfs", "-o", "size=" + Math.max(PAGE, bytes), "tmpfs", at.toString());
        if (bytes < PAGE) {
            Files.write(at.resolve("ballast"), new byte[(int) PAGE]);
        }
    }

    /** Whether this user may mount one. */
    static boolean isPossible(Path scratch) {
        try (Disk disk = new Disk(scratch.resolve("trial"), PAGE)) {
            return Files.getFileStore(disk.at).type().equals("tmpfs");
        } catch (IOException e) {
            return false;
        }
    }

    Path folder() {
        return at;
    }

    /** Changes the size. */
    void resize(long bytes) throws IOException {
        run("mount", "-o", "remount,size=" + bytes, at.toString());
    }

    /** Lets nobody write. */
    void makeReadOnly() throws IOException {
        run("mount", "-o", "remount,ro", at.toString());
    }

    /** Bytes in use. */
    long used() throws IOException {
        FileStore store = Files.getFileStore(at);
        return store.getTotalSpace() - store.getUnallocatedSpace();
    }

    /** Takes the disk away, with all that is on it. */
    @Override
    public void close() {
        try {
            run("umount", "-l", at.toString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void run(String... words) throws IOException {
        try {
            Process process = new ProcessBuilder(words)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            if (process.waitFor() != 0) {
                throw new IOException(String.join(" ", words) + " fails");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
    }
}
