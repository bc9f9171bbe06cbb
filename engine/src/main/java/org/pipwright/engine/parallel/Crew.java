package org.pipwright.engine.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Workers that share out numbered tasks. Each worker is an object that serves one thread at a time, such as an evaluator
 * with its buffers. Who does which task is left to chance, so tasks must write to places of their own.
 *
 * @param <W> type of the workers
 */
public final class Crew<W> implements AutoCloseable {
    private final List<W> workers;
    private final ExecutorService threads;

    /** What a worker does with a task. */
    @FunctionalInterface
    public interface Work<W> {
        /**
         * Does one task.
         *
         * @param worker the worker, not in use by any other thread
         * @param task its number
         */
        void run(W worker, int task);
    }

    /**
     * Hires the workers.
     *
     * @param size number of workers, at least 1; with 1 everything runs on the caller's thread
     * @param hire makes one worker
     */
    public Crew(int size, Supplier<W> hire) {
        if (size < 1) {
            throw new IllegalArgumentException("a crew of " + size + " threads: use 1 or more");
        }
        workers = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            workers.add(hire.get());
        }
        threads = size == 1 ? null : Executors.newFixedThreadPool(size - 1, Crew::daemon);
    }

    /**
     * A crew whose workers are numbers, for tasks that keep their buffers in arrays.
     *
     * @param size number of workers, at least 1
     * @return workers 0 to size - 1
     */
    public static Crew<Integer> numbered(int size) {
        AtomicInteger next = new AtomicInteger();
        return new Crew<>(size, next::getAndIncrement);
    }

    /**
     * How many there are.
     *
     * @return number of workers, at least 1
     */
    public int size() {
        return workers.size();
    }

    private static Thread daemon(Runnable body) {
        Thread thread = new Thread(body, "pipwright-crew");
        thread.setDaemon(true);
        return thread;
    }

    /**
     * The workers, for reading counters while no tasks run.
     *
     * @return an unmodifiable list
     */
    public List<W> workers() {
        return List.copyOf(workers);
    }

    /**
     * Runs tasks 0 to count - 1 and waits for all of them; the caller's thread takes part. If one fails, those not begun
     * are dropped and the failure is thrown here. One run at a time.
     *
     * @param count number of tasks
     * @param work what to do
     */
    public void run(int count, Work<W> work) {
        AtomicInteger next = new AtomicInteger();
        int helpers = Math.min(workers.size(), count) - 1;
        List<Future<?>> running = new ArrayList<>();
        for (int i = 1; i <= helpers; i++) {
            W worker = workers.get(i);
            running.add(threads.submit(() -> drain(worker, next, count, work)));
        }
        Throwable failure = null;
        try {
            drain(workers.get(0), next, count, work);
        } catch (RuntimeException | Error e) {
            failure = e;
        }
        for (Future<?> future : running) {
            Throwable theirs = await(future);
            failure = failure == null ? theirs : failure;
        }
        rethrow(failure);
    }

    private static <W> void drain(W worker, AtomicInteger next, int count, Work<W> work) {
        try {
            for (int task = next.getAndIncrement(); task < count; task = next.getAndIncrement()) {
                work.run(worker, task);
            }
        } catch (RuntimeException | Error e) {
            next.set(count);
            throw e;
        }
    }

    /** Waits for a helper even if this thread is interrupted: its buffers are not free before it has ended. */
    private static Throwable await(Future<?> future) {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    future.get();
                    return null;
                } catch (ExecutionException e) {
                    return e.getCause();
                } catch (InterruptedException e) {
                    interrupted = true;
                }
            }
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private static void rethrow(Throwable failure) {
        if (failure instanceof RuntimeException) {
            throw (RuntimeException) failure;
        }
        if (failure != null) {
            throw (Error) failure;
        }
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        if (threads != null) {
            threads.shutdown();
        }
    }
}
