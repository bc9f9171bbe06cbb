package org.pipwright.cli.command;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;

/** What is made in a thread of its own, beside everything else. */
final class Beside<T> {
    private final CompletableFuture<T> made;

    private Beside(CompletableFuture<T> made) {
        this.made = made;
    }

    /** Begins at once; nothing waits for the thread when the process ends. */
    static <T> Beside<T> begin(Supplier<T> work) {
        return new Beside<>(CompletableFuture.supplyAsync(work, task -> {
            Thread thread = new Thread(task, "pipwright-beside");
            thread.setDaemon(true);
            thread.start();
        }));
    }

    /** Waits for it; fails as it failed. */
    T get() {
        try {
            return made.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw e;
        }
    }
}
