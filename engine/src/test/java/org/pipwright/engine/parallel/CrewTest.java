package org.pipwright.engine.parallel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CrewTest {
    @ParameterizedTest
    @CsvSource({"1, 0", "1, 100", "2, 1", "3, 1000", "8, 5"})
    void doesEachTaskOnceAndNoWorkerTwiceAtATime(int size, int tasks) {
        int[] done = new int[tasks];
        try (Crew<AtomicInteger> crew = new Crew<>(size, AtomicInteger::new)) {
            for (int round = 1; round <= 3; round++) {
                crew.run(tasks, (worker, task) -> {
                    assertEquals(1, worker.incrementAndGet());
                    done[task]++;
                    worker.decrementAndGet();
                });
                int times = round;
                assertArrayEquals(IntStream.range(0, tasks).map(i -> times).toArray(), done);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 3", "2, 3", "4, 99"})
    void aFailureReachesTheCallerAndEndsTheRun(int size, int failing) {
        IllegalStateException failure = new IllegalStateException("on purpose");
        AtomicInteger done = new AtomicInteger();
        try (Crew<Object> crew = new Crew<>(size, Object::new)) {
            IllegalStateException thrown = assertThrows(
                    IllegalStateException.class,
                    () -> crew.run(1_000_000, (worker, task) -> {
                        if (task == failing) {
                            throw failure;
                        }
                        done.incrementAndGet();
                    }));
            assertSame(failure, thrown);
            assertTrue(done.get() < 1_000_000 - 1, "the tasks went on");
            crew.run(7, (worker, task) -> done.addAndGet(1_000_000));
            assertTrue(done.get() >= 7_000_000, "the crew works on after a failure");
        }
    }

    @Test
    void aCrewOfNobodyIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Crew<>(0, Object::new));
    }
}
