package org.pipwright.engine.network;

import java.nio.ByteBuffer;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/**
 * The SHA-256 of a model's weights. That of a large model takes a tenth of a second in a JVM that has just started, so a thread of
 * its own works it out while the weights are read.
 */
final class Checksum {
    /** Below so many bytes a thread costs more than it saves. */
    private static final int LARGE = 1 << 20;

    private final FutureTask<String> task;

    /** Begins with all bytes of a buffer, which nobody may change. */
    Checksum(ByteBuffer data) {
        task = new FutureTask<>(() -> ModelFile.sha256(data));
        if (data.limit() >= LARGE) {
            Thread thread = new Thread(task, "checksum");
            thread.setDaemon(true);
            thread.start();
        } else {
            task.run();
        }
    }

    /** The checksum in hexadecimal, as soon as it is known. */
    String get() {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return task.get();
                } catch (InterruptedException e) {
                    interrupted = true;
                } catch (ExecutionException e) {
                    throw new IllegalStateException("a checksum cannot fail", e.getCause());
                }
            }
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
