package org.pipwright.engine.duel;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;

/**
 * A duel: every dice sequence is played twice with sides swapped, by any number of threads with the same result.
 *
 * <p>Pairs are numbered and go to threads in blocks of {@value #BLOCK}. Blocks are added up in order whatever order they
 * come in, and a test that may stop early looks after each of them, so neither sums nor stops depend on threads.
 */
public final class Duel {
    /** Pairs that one thread plays in one go. */
    public static final int BLOCK = 16;

    private final Entrant a;
    private final Entrant b;
    private final DuelSettings settings;
    private final Consumer<Tally> progress;

    private final AtomicLong nextBlock = new AtomicLong();
    private final Map<Long, Tally> early = new HashMap<>();
    private volatile boolean stopped;
    private long merged;
    private Tally total = Tally.NONE;

    /**
     * A duel about to be played; an instance serves one {@link #run}.
     *
     * @param a one side
     * @param b the other
     * @param settings what decides the duel
     * @param progress told of the tally so far after each block, in order, one call at a time
     * @throws IllegalArgumentException if luck is to be measured but neither side has a valuer
     */
    public Duel(Entrant a, Entrant b, DuelSettings settings, Consumer<Tally> progress) {
        if (settings.luck() && a.valuers().isEmpty() && b.valuers().isEmpty()) {
            throw new IllegalArgumentException("luck is valued by a net, and neither " + a.name() + " nor " + b.name()
                    + " has one: leave luck out, or let a net play");
        }
        this.a = a;
        this.b = b;
        this.settings = settings;
        this.progress = progress;
    }

    /**
     * Plays the duel to its end.
     *
     * @param threads number of threads, at least 1
     * @return the tally of all pairs, or of those up to the verdict or to {@link #stop}
     */
    public Tally run(int threads) {
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

    /** Ends the duel early, from any thread: {@link #run} soon returns what is known, blocks under way left out. */
    public void stop() {
        stopped = true;
    }

    private synchronized Tally soFar() {
        return total;
    }

    private void work() {
        try {
            PairPlayer player = new PairPlayer(a, b, settings, () -> stopped);
            while (!stopped) {
                long block = nextBlock.getAndIncrement();
                long from = block * BLOCK;
                if (from >= settings.pairs()) {
                    return;
                }
                merge(block, player.play(from, Math.min(from + BLOCK, settings.pairs())));
            }
        } catch (CancellationException e) {
            // Stopped half way through a block, which does not count.
        } catch (RuntimeException | Error e) {
            stop();
            throw e;
        }
    }

    private synchronized void merge(long block, Tally tally) {
        early.put(block, tally);
        // After a verdict, blocks that other threads had begun must not count.
        for (Tally next; !stopped && (next = early.remove(merged)) != null; merged++) {
            total = total.plus(next);
            progress.accept(total);
            stopped |= decided();
        }
    }

    private boolean decided() {
        return settings.test()
                .map(test -> test.verdict(total.best()) != SequentialTest.Verdict.UNDECIDED)
                .orElse(false);
    }
}
