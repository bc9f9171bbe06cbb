package org.pipwright.training.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A fixed number of threads that work off numbered tasks. What a task does depends on its number only, so that results
 * are the same for any number of threads.
 */
public final class Workers implements AutoCloseable {
    private final ExecutorService threads;
    private final int count;

    /** One numbered task. */
    @FunctionalInterface
    public interface Task {
        /**
         * Does the task.
         *
         * @param worker number of the thread, 0 to count - 1: whose buffers to use
         * @param number the task's number
         */
        void run(int worker, int number);
    }

    /**
     * Starts the threads.
     *
     * @param count number of threads including the caller's, at least 1
     */
    public Workers(int count) {
        this.count = count;
        this.threads = Executors.newFixedThreadPool(Math.max(1, count - 1), work -> {
            Thread thread = new Thread(work, "pipwright-worker");
            thread.setDaemon(true);
            return thread;
        });
    }

    /**
     * Number of threads.
     *
     * @return at least 1
     */
    public int count() {
        return count;
    }

    /**
     * Does tasks 0 to tasks - 1 and waits for the last; the calling thread works too.
     *
     * @param tasks number of tasks
     * @param task what to do
     */
    public void run(int tasks, Task task) {
        AtomicInteger next = new AtomicInteger();
        List<Future<?>> helpers = new ArrayList<>();
        for (int w = 1; w < Math.min(count, tasks); w++) {
            int worker = w;
            helpers.add(threads.submit(() -> work(worker, tasks, next, task)));
        }
        List<Throwable> failures = new ArrayList<>();
        try {
            work(0, tasks, next, task);
        } finally {
            // Whatever happened here, nobody may touch shared buffers after this call.
            helpers.forEach(helper -> await(helper, failures));
        }
        if (!failures.isEmpty()) {
            if (failures.get(0) instanceof RuntimeException failure) {
                throw failure;
            }
            throw new IllegalStateException(failures.get(0));
        }
    }

    private static void work(int worker, int tasks, AtomicInteger next, Task task) {
        try {
            for (int number = next.getAndIncrement(); number < tasks; number = next.getAndIncrement()) {
                task.run(worker, number);
            }
        } finally {
            // The last number, or a failure, which makes the rest pointless.
            next.set(tasks);
        }
    }

    private static void await(Future<?> helper, List<Throwable> failures) {
        boolean interrupted = false;
        while (true) {
            try {
                helper.get();
                break;
            } catch (InterruptedException e) {
                interrupted = true;
            } catch (ExecutionException e) {
                failures.add(e.getCause());
                break;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Ends the threads. */
    @Override
    public void close() {
        threads.shutdownNow();
    }
}
