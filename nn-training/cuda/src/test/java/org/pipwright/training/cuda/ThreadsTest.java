package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicIntegerArray;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tasks that all threads share. */
class ThreadsTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 1000})
    void doesEachTaskOnce(int tasks) {
        AtomicIntegerArray done = new AtomicIntegerArray(tasks + 1);
        Threads.each(tasks, done::getAndIncrement);
        for (int i = 0; i < tasks; i++) {
            assertEquals(1, done.get(i), "task " + i);
        }
        assertEquals(0, done.get(tasks));
    }

    /** Whoever waits for the tasks learns that one failed. */
    @ParameterizedTest
    @ValueSource(ints = {0, 99})
    void failuresArrive(int bad) {
        IllegalStateException e = assertThrows(
                IllegalStateException.class,
                () -> Threads.each(100, i -> {
                    if (i == bad) {
                        throw new IllegalStateException("task " + i);
                    }
                }));
        // From another thread it comes wrapped in one of its kind.
        assertTrue(e.getMessage().endsWith("task " + bad), e.getMessage());
    }
}
