package org.pipwright.engine.reduced;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Runs a task over all cells by rising total pip count of both sides: every play without a hit leads to a smaller total,
 * so its value is already new (the Gauss-Seidel order for this game). Cells of one total are shared among threads.
 *
 * <p>A play that hits, or no move, may lead to a cell of the same total, which another thread may be writing: the reader
 * then gets the old value or the new one (JVMs on 64-bit machines write a double or float whole), either of which will do.
 */
final class Sweeper implements AutoCloseable {
    /** Opponents taken at a time by one thread. */
    private static final int BLOCK = 32;

    /** Below so many opponents, handing work to threads costs more than it saves. */
    private static final int FEW = 4 * BLOCK;

    private final Sides sides;
    private final int threads;
    private final ExecutorService executor;

    Sweeper(Sides sides, int threads) {
        if (threads < 1) {
            throw new IllegalArgumentException("threads: at least 1, not " + threads);
        }
        this.sides = sides;
        this.threads = threads;
        executor = Executors.newFixedThreadPool(threads, work -> {
            Thread thread = new Thread(work, "sweep");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Runs a task over all unfinished and empty cells; returns the largest result. */
    double ascending(RowTask task) {
        double largest = 0;
        for (int total = 2; total <= 2 * sides.mostPips(); total++) {
            largest = Math.max(largest, level(task, total));
        }
        return largest;
    }

    private double level(RowTask task, int total) {
        int first = sides.firstOfPips(Math.max(1, total - sides.mostPips()));
        int last = sides.firstOfPips(Math.min(total - 1, sides.mostPips()) + 1);
        if (threads == 1 || last - first < FEW) {
            return rows(task, total, first, last);
        }
        AtomicInteger next = new AtomicInteger(first);
        List<Callable<Double>> workers = new ArrayList<>();
        for (int t = 0; t < threads; t++) {
            workers.add(() -> {
                double largest = 0;
                for (int from = next.getAndAdd(BLOCK); from < last; from = next.getAndAdd(BLOCK)) {
                    largest = Math.max(largest, rows(task, total, from, Math.min(from + BLOCK, last)));
                }
                return largest;
            });
        }
        return largestOf(workers);
    }

    private double rows(RowTask task, int total, int first, int last) {
        double largest = 0;
        for (int opponent = first; opponent < last; opponent++) {
            int pips = total - sides.pips(opponent);
            int from = sides.firstOfPips(pips);
            int to = sides.firstOfPips(pips + 1);
            if (from < to) {
                largest = Math.max(largest, task.run(opponent, from, to));
            }
        }
        return largest;
    }

    private double largestOf(List<Callable<Double>> workers) {
        try {
            double largest = 0;
            for (Future<Double> done : executor.invokeAll(workers)) {
                largest = Math.max(largest, done.get());
            }
            return largest;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while sweeping", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("a sweep failed", e.getCause());
        }
    }

    @Override
    public void close() {
        executor.shutdownNow();
    }
}
