package org.pipwright.engine.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A hidden file beside the one it is to become, with a name that no other process or thread uses. Its process holds a lock
 * on it; one without was left behind by a process that was killed, and {@link #removeAbandoned} removes it.
 */
public final class PartFile implements AutoCloseable {
    /** Longest part of the target's name that is repeated, in bytes: names may have 255, and some is added. */
    private static final int LONGEST = 120;

    private static final String NAMES = "\\..*\\.[0-9a-f-]{36}\\.part";

    /** A file is made a moment before it is locked. */
    private static final Duration YOUNG = Duration.ofSeconds(5);

    /** Those of this process: to open and close one anywhere in it would give its lock away. */
    private static final Set<Path> OWN = ConcurrentHashMap.newKeySet();

    private final Path path;
    private final FileChannel channel;

    private PartFile(Path path, FileChannel channel) {
        this.path = path;
        this.channel = channel;
    }

    /**
     * Makes a part file.
     *
     * @param target the file it is to become; its folder must exist
     * @return an empty file, to be closed
     * @throws IOException if it cannot be made
     */
    public static PartFile of(Path target) throws IOException {
        String name = target.getFileName().toString();
        String shown = name.getBytes(StandardCharsets.UTF_8).length <= LONGEST ? name : "pipwright";
        Path path = target.toAbsolutePath().resolveSibling("." + shown + "." + UUID.randomUUID() + ".part");
        OWN.add(path);
        try {
            // Not createTempFile, whose files nobody but their owner may read, whatever the user's settings say.
            FileChannel channel = FileChannel.open(
                    path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
            lock(channel);
            return new PartFile(path, channel);
        } catch (IOException e) {
            OWN.remove(path);
            throw e;
        }
    }

    /** Where there are no locks, as on some network drives, the file is never taken for abandoned either. */
    private static void lock(FileChannel channel) {
        try {
            channel.tryLock();
        } catch (IOException e) {
            // Only the removal of what a kill leaves depends on it.
        }
    }

    /**
     * What to write to.
     *
     * @return the open file
     */
    public FileChannel channel() {
        return channel;
    }

    /**
     * Removes the file also where the process is ended by a signal. Not for what is saved in answer to that signal.
     *
     * @return this
     */
    public PartFile discardedAtExit() {
        path.toFile().deleteOnExit();
        return this;
    }

    /**
     * Gives the file its name, in place of an older file.
     *
     * @param target where it goes, in the same folder
     * @throws IOException if that fails
     */
    public void become(Path target) throws IOException {
        // Still locked: a moment without the lock would be one in which it looks abandoned.
        Files.move(path, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /** Closes the file and, if it has not become another, removes it. */
    @Override
    public void close() throws IOException {
        try (channel) {
            Files.deleteIfExists(path);
        } finally {
            OWN.remove(path);
        }
    }

    /**
     * Removes part files whose process is gone, as far as that can be told and done.
     *
     * @param folder where to look
     */
    public static void removeAbandoned(Path folder) {
        try (DirectoryStream<Path> parts =
                Files.newDirectoryStream(folder.toAbsolutePath(), PartFile::mayBeAbandoned)) {
            for (Path part : parts) {
                if (unlocked(part)) {
                    Files.deleteIfExists(part);
                }
            }
        } catch (IOException e) {
            // They take space, and do no other harm.
        }
    }

    private static boolean mayBeAbandoned(Path path) throws IOException {
        return path.getFileName().toString().matches(NAMES)
                && !OWN.contains(path)
                && Files.isRegularFile(path)
                && Files.getLastModifiedTime(path)
                        .toInstant()
                        .isBefore(Instant.now().minus(YOUNG));
    }

    private static boolean unlocked(Path part) {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE);
                FileLock lock = channel.tryLock()) {
            return lock != null;
        } catch (IOException | OverlappingFileLockException e) {
            return false;
        }
    }
}
