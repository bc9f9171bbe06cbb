package org.pipwright.training.cuda;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/**
 * Work shared by all threads of this machine. Whoever is done takes the next task, so that all end at nearly the same
 * time; a stream alone gives each thread a few long stretches, and the others wait for the last.
 */
final class Threads {
    private Threads() {}

    /** How many there are, the caller's among them. */
    static int count() {
        return ForkJoinPool.getCommonPoolParallelism() + 1;
    }

    /** Does tasks 0 to {@code tasks - 1}, in any order; all are done when it returns. */
    static void each(int tasks, IntConsumer task) {
        AtomicInteger next = new AtomicInteger();
        IntStream.range(0, Math.min(tasks, count())).parallel().forEach(thread -> {
            for (int i = next.getAndIncrement(); i < tasks; i = next.getAndIncrement()) {
                task.accept(i);
            }
        });
    }
}
