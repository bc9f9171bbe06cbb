package org.pipwright.engine.bearoff;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.pipwright.engine.position.Planes;

/**
 * Visits all arrangements of an index in the order of their pip counts. Every play lowers the pip count, so what a level
 * needs is known when its turn comes, and the arrangements of one level may be computed side by side.
 */
final class PipLevels {
    /** Arrangements a thread takes at a time. */
    private final int batch;

    private final int[] order;
    private final int[] starts;

    PipLevels(SideIndex index, int batch) {
        this.batch = batch;
        int[] pips = new int[index.size()];
        int[] planes = new int[Planes.SIDE];
        int most = 0;
        for (int i = 0; i < pips.length; i++) {
            index.write(i, planes, 0);
            pips[i] = Planes.pips(planes, 0);
            most = Math.max(most, pips[i]);
        }
        starts = new int[most + 2];
        for (int count : pips) {
            starts[count + 1]++;
        }
        for (int level = 1; level < starts.length; level++) {
            starts[level] += starts[level - 1];
        }
        int[] next = starts.clone();
        order = new int[pips.length];
        for (int i = 0; i < pips.length; i++) {
            order[next[pips[i]]++] = i;
        }
    }

    /** Computes one arrangement; each thread has its own. */
    interface Worker {
        void compute(int index);
    }

    /** Runs workers over all arrangements, level by level; reports the share done after each level. */
    void run(int threads, Supplier<Worker> workers, TableProgress progress) {
        ExecutorService pool = Executors.newFixedThreadPool(threads, PipLevels::daemon);
        try {
            List<Worker> all = new ArrayList<>();
            for (int t = 0; t < threads; t++) {
                all.add(workers.get());
            }
            for (int level = 0; level + 1 < starts.length; level++) {
                runLevel(level, pool, all);
                progress.done((double) starts[level + 1] / order.length);
            }
        } finally {
            pool.shutdownNow();
        }
    }

    private static Thread daemon(Runnable task) {
        Thread thread = new Thread(task, "table-builder");
        thread.setDaemon(true);
        return thread;
    }

    private void runLevel(int level, ExecutorService pool, List<Worker> workers) {
        AtomicInteger next = new AtomicInteger(starts[level]);
        int end = starts[level + 1];
        int useful = Math.min(workers.size(), (end - starts[level] + batch - 1) / batch);
        if (useful <= 1) {
            takeBatches(workers.get(0), next, end);
            return;
        }
        List<Callable<Void>> tasks = new ArrayList<>();
        for (Worker worker : workers.subList(0, useful)) {
            tasks.add(() -> {
                takeBatches(worker, next, end);
                return null;
            });
        }
        await(pool, tasks);
    }

    private void takeBatches(Worker worker, AtomicInteger next, int end) {
        for (int from = next.getAndAdd(batch); from < end; from = next.getAndAdd(batch)) {
            for (int i = from; i < Math.min(from + batch, end); i++) {
                worker.compute(order[i]);
            }
        }
    }

    private static void await(ExecutorService pool, List<Callable<Void>> tasks) {
        try {
            for (Future<Void> future : pool.invokeAll(tasks)) {
                future.get();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while building a table", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("building a table failed", e.getCause());
        }
    }
}
