package org.pipwright.engine.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Workers that share out numbered tasks. Each worker is an object that serves one thread at a time, such as an evaluator
 * with its buffers. Who does which task is left to chance, so tasks must write to places of their own.
 *
 * <p>Learning has thousands of runs a second, a few microseconds of work each: helpers therefore watch for the next run for
 * a moment before they go to sleep, and one that wakes up too late is not waited for.
 *
 * @param <W> type of the workers
 */
public final class Crew<W> implements AutoCloseable {
    private final List<W> workers;
    private final List<Helper<W>> helpers = new ArrayList<>();

    /**
     * What a worker does with a task.
     *
     * @param <W> type of the worker
     */
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
        for (int i = 1; i < size; i++) {
            helpers.add(new Helper<>(workers.get(i)));
        }
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
        Job<W> job = new Job<>(count, work);
        int wanted = Math.min(workers.size(), count) - 1;
        for (int i = 0; i < wanted; i++) {
            helpers.get(i).offer(job);
        }
        job.drain(workers.get(0));
        job.finish();
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        helpers.forEach(Helper::dismiss);
    }
}
