package org.pipwright.engine.parallel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicIntegerArray;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every task once, whatever happens. */
class NumberedCrewTest {
    @ParameterizedTest
    @CsvSource({"1, 0", "1, 1", "1, 100", "2, 1", "2, 1000", "5, 3", "5, 1000"})
    void everyTaskOnce(int threads, int tasks) {
        try (Crew<Integer> workers = Crew.numbered(threads)) {
            for (int repeat = 0; repeat < 20; repeat++) {
                AtomicIntegerArray done = new AtomicIntegerArray(tasks);
                workers.run(tasks, (worker, number) -> {
                    assertTrue(worker >= 0 && worker < threads);
                    done.incrementAndGet(number);
                });
                for (int t = 0; t < tasks; t++) {
                    assertEquals(1, done.get(t));
                }
            }
        }
    }

    /** A worker's number is never in use twice at one time: it names its buffers. */
    @Test
    void aWorkerDoesOneTaskAtATime() {
        try (Crew<Integer> workers = Crew.numbered(4)) {
            AtomicIntegerArray busy = new AtomicIntegerArray(4);
            workers.run(500, (worker, number) -> {
                assertEquals(1, busy.incrementAndGet(worker));
                Thread.yield();
                busy.decrementAndGet(worker);
            });
        }
    }

    /** Whichever thread fails, the failure arrives, and nobody is still at work by then. */
    @Test
    void failuresArriveWhenAllHaveStopped() {
        try (Crew<Integer> workers = Crew.numbered(4)) {
            for (int repeat = 0; repeat < 100; repeat++) {
                AtomicInteger working = new AtomicInteger();
                IllegalStateException failure = new IllegalStateException("a bug in task 5");
                Exception thrown = assertThrows(
                        IllegalStateException.class,
                        () -> workers.run(50, (worker, number) -> {
                            working.incrementAndGet();
                            try {
                                if (number % 5 == 0) {
                                    throw failure;
                                }
                                Thread.sleep(1);
                            } catch (InterruptedException e) {
                                throw new AssertionError(e);
                            } finally {
                                working.decrementAndGet();
                            }
                        }));
                assertSame(failure, thrown);
                assertEquals(0, working.get());
            }
        }
    }
}
