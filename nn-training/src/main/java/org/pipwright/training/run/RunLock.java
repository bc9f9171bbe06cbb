package org.pipwright.training.run;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.function.Consumer;
import org.pipwright.engine.files.Reason;

/**
 * Keeps a run to one process at a time, by a lock on a file in its folder, which the system releases when the process
 * ends in whatever way. The file stays: removing it would let two processes lock two files of the same name.
 */
public final class RunLock implements AutoCloseable {
    /** Name of the locked file in the folder. */
    static final String FILE = "run.lock";

    private final FileChannel channel;

    private RunLock(FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Takes the lock.
     *
     * @param folder folder of a run
     * @param warn told if there are no locks to be had there, as on some network drives; the run goes on without
     * @return the lock, to be closed at the end of the run
     * @throws InvalidRunException if another process has it, or this one has it already
     */
    public static RunLock take(Path folder, Consumer<String> warn) {
        FileChannel channel = null;
        try {
            channel = FileChannel.open(folder.resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = channel.tryLock();
            if (lock == null) {
                throw inUse(folder, channel);
            }
        } catch (OverlappingFileLockException e) {
            throw inUse(folder, channel);
        } catch (IOException e) {
            warn.accept("cannot lock '" + folder + "' (" + Reason.of(e)
                    + "): see to it that no other process trains in it");
        }
        return new RunLock(channel);
    }

    private static InvalidRunException inUse(Path folder, FileChannel channel) {
        close(channel);
        return new InvalidRunException(
                "another process is training in '" + folder + "': stop it first, or use another folder");
    }

    @Override
    public void close() {
        close(channel);
    }

    private static void close(FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            // Nothing was written through it, and the lock goes with the process at the latest.
        }
    }
}
