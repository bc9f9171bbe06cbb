package org.pipwright.cli.desk;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;

/**
 * An answer in the making. It is worked on beside every lock, as long as somebody comes back to ask for it: browsers do not
 * tell when a page has gone, but a page that has gone asks no more.
 *
 * @param <T> the answer
 */
final class Thought<T> {
    /** Time between two questions of a page that is still there, with plenty to spare. */
    static final Duration PATIENCE = Duration.ofSeconds(6);

    private final long patience;
    private final CompletableFuture<T> answer;
    private volatile long asked = System.nanoTime();
    private volatile boolean dropped;

    /**
     * Begins.
     *
     * @param executor who works
     * @param patience how long after a question it goes on
     * @param work makes the answer; given a question to ask again and again, whether to give up with a
     *     {@link CancellationException}
     */
    Thought(Executor executor, Duration patience, Function<BooleanSupplier, T> work) {
        this.patience = patience.toNanos();
        answer = CompletableFuture.supplyAsync(() -> work.apply(this::unwanted), executor);
    }

    private boolean unwanted() {
        return dropped || System.nanoTime() - asked > patience;
    }

    /** Nobody will ask again. */
    void drop() {
        dropped = true;
    }

    /** Whether it was given up without an answer. */
    boolean gone() {
        return answer.isCompletedExceptionally();
    }

    /**
     * Asks for the answer.
     *
     * @param wait how long to wait for it
     * @return the answer; empty if it is not there yet, or was given up
     */
    Optional<T> within(Duration wait) {
        asked = System.nanoTime() + wait.toNanos();
        try {
            return Optional.of(answer.get(wait.toMillis(), TimeUnit.MILLISECONDS));
        } catch (TimeoutException | CancellationException e) {
            return Optional.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException e) {
            return given(e.getCause());
        }
    }

    private static <T> Optional<T> given(Throwable cause) {
        if (cause instanceof CancellationException) {
            return Optional.empty();
        }
        throw new CompletionException(cause);
    }
}
