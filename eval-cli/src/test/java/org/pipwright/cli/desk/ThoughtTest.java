package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Answers in the making, and what becomes of those that nobody asks for any more. */
@Timeout(60)
class ThoughtTest {
    private static final Duration LONG = Duration.ofHours(1);
    private static final Duration NONE = Duration.ZERO;
    private static final Executor THREADS = task -> new Thread(task).start();

    /** Works until nobody wants the answer. */
    private static String endless(BooleanSupplier unwanted) {
        while (!unwanted.getAsBoolean()) {
            Thread.onSpinWait();
        }
        throw new CancellationException("given up");
    }

    private static void awaitEnd(Thought<?> thought) {
        while (!thought.gone()) {
            Thread.onSpinWait();
        }
    }

    @Test
    void whoComesBackGetsTheAnswer() {
        CountDownLatch slow = new CountDownLatch(1);
        Thought<String> thought = new Thought<>(THREADS, LONG, unwanted -> {
            try {
                slow.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            return "yes";
        });
        assertEquals(Optional.empty(), thought.within(NONE));
        assertFalse(thought.gone());
        slow.countDown();
        assertEquals(Optional.of("yes"), thought.within(LONG));
    }

    @Test
    void workEndsWhenNobodyComesBack() {
        Thought<String> thought = new Thought<>(THREADS, Duration.ofMillis(50), ThoughtTest::endless);
        awaitEnd(thought);
        assertEquals(Optional.empty(), thought.within(LONG));
    }

    @Test
    void workEndsWhenItIsDropped() {
        Thought<String> thought = new Thought<>(THREADS, LONG, ThoughtTest::endless);
        assertEquals(Optional.empty(), thought.within(NONE));
        thought.drop();
        awaitEnd(thought);
        assertTrue(thought.gone());
    }

    @Test
    void whatFailsIsNoAnswer() {
        Thought<String> thought = new Thought<>(THREADS, LONG, unwanted -> {
            throw new IllegalStateException("broken");
        });
        assertThrows(CompletionException.class, () -> thought.within(LONG));
    }
}
