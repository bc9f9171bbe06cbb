package org.pipwright.engine.duel;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BinaryOperator;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.LongStream;

/**
 * Shares numbered pairs out among threads in blocks of {@value #BLOCK}. Blocks are added up in order whatever order they
 * come in, and a test that may stop early looks after each of them, so neither sums nor stops depend on threads.
 *
 * @param <T> what is known of some pairs
 */
final class PairBlocks<T> {
    /** Pairs that one thread plays in one go. */
    static final int BLOCK = 16;

    private final long pairs;
    private final Function<BooleanSupplier, Worker<T>> hire;
    private final BinaryOperator<T> plus;
    private final Predicate<T> decided;
    private final Consumer<T> progress;

    private final AtomicLong nextBlock = new AtomicLong();
    private final Map<Long, T> early = new HashMap<>();
    private volatile boolean stopped;
    private long merged;
    private T total;

    /** Plays pairs for one thread. */
    @FunctionalInterface
    interface Worker<T> {
        /** Plays the pairs from {@code from} to {@code to}, exclusive; a {@link CancellationException} drops them. */
        T play(long from, long to);
    }

    /**
     * Pairs about to be played.
     *
     * @param pairs how many at most
     * @param hire makes a worker for one thread, which asks now and then whether to stop
     * @param none what is known of no pairs
     * @param plus puts together what is known of one set of pairs and of the set after it
     * @param decided whether enough is known
     * @param progress told of all so far after each block, in order, one call at a time
     */
    PairBlocks(
            long pairs,
            Function<BooleanSupplier, Worker<T>> hire,
            T none,
            BinaryOperator<T> plus,
            Predicate<T> decided,
            Consumer<T> progress) {
        this.pairs = pairs;
        this.hire = hire;
        this.total = none;
        this.plus = plus;
        this.decided = decided;
        this.progress = progress;
    }

    /** Plays all pairs, or those up to the decision or to {@link #stop}. */
    T run(int threads) {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> workers = new ArrayList<>();
            for (int t = 0; t < threads; t++) {
                workers.add(pool.submit(this::work));
            }
            for (Future<?> worker : workers) {
                worker.get();
            }
            return soFar();
        } catch (ExecutionException e) {
            throw new IllegalStateException("a thread of the duel failed", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return soFar();
        } finally {
            stop();
            pool.shutdown();
        }
    }

    /** Whoever plays blocks for this process elsewhere. */
    @FunctionalInterface
    interface Elsewhere<T> {
        /** Plays blocks and hands on what is known of each, in order, until no more is wanted or it is told to stop. */
        void play(Iterator<Pairs> blocks, Predicate<T> taken, BooleanSupplier stopped);
    }

    /** The same, played elsewhere. */
    T run(Elsewhere<T> elsewhere) {
        Iterator<Pairs> all = LongStream.iterate(0, from -> from < pairs, from -> from + BLOCK)
                .mapToObj(from -> new Pairs(from, Math.min(from + BLOCK, pairs)))
                .iterator();
        elsewhere.play(all, this::mergeNext, () -> stopped);
        return soFar();
    }

    private synchronized boolean mergeNext(T known) {
        merge(merged, known);
        return !stopped;
    }

    /** From any thread: {@link #run} soon returns what is known, blocks under way left out. */
    void stop() {
        stopped = true;
    }

    private synchronized T soFar() {
        return total;
    }

    private void work() {
        try {
            Worker<T> worker = hire.apply(() -> stopped);
            while (!stopped) {
                long block = nextBlock.getAndIncrement();
                long from = block * BLOCK;
                if (from >= pairs) {
                    return;
                }
                merge(block, worker.play(from, Math.min(from + BLOCK, pairs)));
            }
        } catch (CancellationException e) {
            // Stopped half way through a block, which does not count.
        } catch (RuntimeException | Error e) {
            stop();
            throw e;
        }
    }

    private synchronized void merge(long block, T known) {
        early.put(block, known);
        // After a decision, blocks that other threads had begun must not count.
        for (T next; !stopped && (next = early.remove(merged)) != null; merged++) {
            total = plus.apply(total, next);
            progress.accept(total);
            stopped |= decided.test(total);
        }
    }
}
