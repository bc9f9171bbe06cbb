package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;

/** Tasks done by Spark, with two threads of this process. */
class SparkWorkforceTest {
    private static final AtomicInteger HIRED = new AtomicInteger();

    private static Local local;
    private static Workforce workforce;

    @BeforeAll
    static void open() {
        local = new Local();
        workforce = local.workforce;
    }

    @AfterAll
    static void close() {
        local.close();
    }

    /** Adds something shared; odd tasks take longer, so that they are done late. */
    private record Adding(Shared<Integer> more) implements Trade<Integer, Long> {
        @Override
        public Worker<Integer, Long> hire() {
            HIRED.incrementAndGet();
            return (task, stopped) -> {
                if (task < 0) {
                    throw new IllegalArgumentException(task + " is negative");
                }
                if (task == 666) {
                    throw new IllegalStateException("no such luck\nat all");
                }
                pause(task % 2);
                return (long) task + more.get();
            };
        }
    }

    private static void pause(int millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static List<Long> added(List<Integer> tasks) {
        List<Long> results = new ArrayList<>();
        workforce.inOrder(new Adding(workforce.share(5)), tasks.iterator(), results::add, () -> false);
        return results;
    }

    @Test
    void resultsComeInTheOrderOfTheTasks() {
        List<Integer> tasks = IntStream.range(1000, 2000).boxed().collect(Collectors.toList());
        assertEquals(tasks.stream().map(task -> task + 5L).collect(Collectors.toList()), added(tasks));
    }

    @Test
    void noTasksNoResults() {
        assertEquals(List.of(), added(List.of()));
    }

    @Test
    void workersOfATradeAreKept() {
        Adding trade = new Adding(workforce.share(1));
        HIRED.set(0);
        for (int i = 0; i < 5; i++) {
            workforce.inOrder(trade, List.of(1, 2, 3).iterator(), result -> true, () -> false);
        }
        assertTrue(HIRED.get() <= 2, "hired " + HIRED);
    }

    @Test
    void nothingIsTakenAfterEnough() {
        List<Long> results = new ArrayList<>();
        workforce.inOrder(
                new Adding(workforce.share(0)),
                IntStream.iterate(0, i -> i + 1).limit(500).iterator(),
                result -> results.add(result) && results.size() < 7,
                () -> false);
        assertEquals(List.of(0L, 1L, 2L, 3L, 4L, 5L, 6L), results);
    }

    /** Waits until it is told to stop. */
    private record Waiting() implements Trade<Integer, Integer> {
        @Override
        public Worker<Integer, Integer> hire() {
            return Waiting::work;
        }

        private static Integer work(Integer task, BooleanSupplier stopped) {
            while (!stopped.getAsBoolean()) {
                pause(5);
            }
            throw new CancellationException();
        }
    }

    @Test
    void aStopEndsTasksThatRun() {
        AtomicBoolean stop = new AtomicBoolean();
        AtomicInteger asked = new AtomicInteger();
        List<Integer> results = new ArrayList<>();
        workforce.inOrder(
                new Waiting(),
                List.of(1, 2, 3).iterator(),
                results::add,
                () -> asked.incrementAndGet() > 3 || stop.get());
        assertEquals(List.of(), results);
        // The threads are free again.
        assertEquals(List.of(6L, 7L), added(List.of(1, 2)));
    }

    @Test
    void aRefusedTaskIsRefusedHere() {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> added(List.of(1, 2, -3, 4)));
        assertEquals("-3 is negative", refused.getMessage());
    }

    @Test
    void aFailureIsOneLine() {
        WorkforceException failed = assertThrows(WorkforceException.class, () -> added(List.of(1, 666)));
        assertEquals(
                "the cluster gave the work up: java.lang.IllegalStateException: no such luck at all",
                failed.getMessage().replaceAll(" \\([^)]*\\) \\([^)]*\\)", ""));
    }
}
