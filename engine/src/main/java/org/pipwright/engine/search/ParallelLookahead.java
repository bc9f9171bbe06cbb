package org.pipwright.engine.search;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/**
 * Lookahead by several threads that share a cache. The results are those of {@link Lookahead}, bit for bit, whatever the
 * number of threads. To be asked from one thread at a time.
 */
public final class ParallelLookahead implements AutoCloseable {
    /** Base-2 logarithm of the cache's entries: about 13 MB when full. */
    private static final int CACHE_BITS = 17;

    private final LookaheadSettings settings;
    private final ChanceCache cache = new ChanceCache(CACHE_BITS);
    private final Crew<Lookahead> crew;
    private final Replies replies = new Replies();
    private volatile long deadline;
    private volatile boolean timed;

    /** Positions to be valued at one step, and their chances so far for the side on roll there. */
    private static final class Batch {
        private final int[] planes;
        private final float[] chances;
        private final int[] pending;
        private int pendingCount;

        Batch(int size) {
            planes = new int[size * Planes.STRIDE];
            chances = new float[size * Outcomes.COUNT];
            pending = new int[size];
        }
    }

    /**
     * A search.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param settings how to narrow plays down
     * @param threads number of threads, at least 1
     */
    public ParallelLookahead(Supplier<Judgement> judgements, LookaheadSettings settings, int threads) {
        this.settings = settings;
        crew = new Crew<>(threads, () -> new Lookahead(judgements.get(), settings, cache, this::late));
    }

    private boolean late() {
        return timed && System.nanoTime() - deadline > 0;
    }

    /**
     * Values the results of a roll step by step, fewer each time as the root settings say.
     *
     * @param planes the position before the play, the mover's side first
     * @param results the results, as the play generator gives them
     * @param count number of results, at least 1
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MOST}
     * @return one entry a result, in the order given, each with the lookahead it was valued with
     */
    public List<Searched> search(int[] planes, int[] results, int count, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        timed = false;
        int[] reached = begin(planes, results, count);
        for (int next = 1; next <= lookahead; next++) {
            replies.narrow(LookaheadSettings.at(settings.root(), next - 1), settings.objective());
            next = replies.keptCount() == 1 ? lookahead : next;
            step(next, reached);
        }
        return found(reached);
    }

    /**
     * Values the results of a roll with more and more lookahead until the time is up. A step that is not finished by then
     * counts for nothing.
     *
     * @param planes the position before the play, the mover's side first
     * @param results the results, as the play generator gives them
     * @param count number of results, at least 1
     * @param time how long to search
     * @return one entry a result, in the order given, each with the lookahead it was valued with
     */
    public List<Searched> search(int[] planes, int[] results, int count, Duration time) {
        deadline = System.nanoTime() + time.toNanos();
        timed = true;
        int[] reached = begin(planes, results, count);
        try {
            for (int next = 1; next <= LookaheadSettings.MOST; next++) {
                replies.narrow(LookaheadSettings.at(settings.root(), next - 1), settings.objective());
                step(next, reached);
            }
        } catch (CancellationException e) {
            // Time is up: the last finished step stands.
            return found(reached);
        }
        return found(reached);
    }

    /**
     * Values the results of a roll with the same lookahead each.
     *
     * @param planes the position before the play, the mover's side first
     * @param results the results, as the play generator gives them
     * @param count number of results, at least 1
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MOST}
     * @return one entry a result, in the order given
     */
    public List<Searched> searchAll(int[] planes, int[] results, int count, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        timed = false;
        int[] reached = begin(planes, results, count);
        if (lookahead > 0) {
            step(lookahead, reached);
        }
        return found(reached);
    }

    /**
     * The chances of an unfinished position before the roll.
     *
     * @param planes the position
     * @param lookahead number of future rolls to average over, 0 to {@value LookaheadSettings#MOST}
     * @return chances of the side on roll
     */
    public Outcomes evaluate(int[] planes, int lookahead) {
        LookaheadSettings.requireLookahead(lookahead);
        timed = false;
        Batch batch = new Batch(1);
        System.arraycopy(planes, 0, batch.planes, 0, Planes.STRIDE);
        if (lookahead == 0) {
            crew.workers().get(0).evaluate(planes, 0, 0, batch.chances, 0);
        } else {
            value(batch, 1, lookahead);
        }
        return Outcomes.of(batch.chances, 0);
    }

    /**
     * The chances of an unfinished position before the roll, with more and more lookahead until the time is up.
     *
     * @param planes the position
     * @param time how long to search
     * @return result 0: chances of the side on roll, with the lookahead that was reached
     */
    public Searched evaluate(int[] planes, Duration time) {
        Searched reached = new Searched(0, evaluate(planes, 0), 0);
        deadline = System.nanoTime() + time.toNanos();
        timed = true;
        Batch batch = new Batch(1);
        System.arraycopy(planes, 0, batch.planes, 0, Planes.STRIDE);
        try {
            for (int next = 1; next <= LookaheadSettings.MOST; next++) {
                batch.pendingCount = 0;
                value(batch, 1, next);
                reached = new Searched(0, Outcomes.of(batch.chances, 0), next);
            }
        } catch (CancellationException e) {
            // Time is up: the last finished step stands.
            return reached;
        }
        return reached;
    }

    /**
     * The best reply to each of the 21 rolls. Their mean is what {@link #evaluate(int[], int)} gives for one roll more.
     *
     * @param planes an unfinished position
     * @param lookahead of each reply, 0 to {@value LookaheadSettings#MOST} - 1
     * @param results where to write what the replies lead to, {@value Planes#STRIDE} ints a roll, as the play generator does
     * @return six chances a roll, for the side on roll, in the order of {@link Roll#all()}
     */
    float[] replies(int[] planes, int lookahead, int[] results) {
        LookaheadSettings.requireLookahead(lookahead + 1);
        timed = false;
        float[] chances = new float[Roll.COUNT * Outcomes.COUNT];
        crew.run(Roll.COUNT, (search, roll) -> {
            int best = search.reply(planes, 0, roll, lookahead, chances, roll * Outcomes.COUNT);
            System.arraycopy(
                    search.results(lookahead), best * Planes.STRIDE, results, roll * Planes.STRIDE, Planes.STRIDE);
        });
        return chances;
    }

    private int[] begin(int[] planes, int[] results, int count) {
        crew.workers().get(0).expand(planes, 0, results, count, replies);
        replies.keepAll(0);
        return new int[count];
    }

    /** Values the kept replies with a lookahead of at least 1. */
    private void step(int lookahead, int[] reached) {
        int size = replies.keptCount();
        Batch batch = new Batch(size);
        for (int k = 0; k < size; k++) {
            Planes.copySwapped(replies.results(), replies.kept(k) * Planes.STRIDE, batch.planes, k * Planes.STRIDE);
        }
        value(batch, size, lookahead);
        for (int k = 0; k < size; k++) {
            Chances.swap(batch.chances, k * Outcomes.COUNT);
            int to = replies.kept(k);
            System.arraycopy(batch.chances, k * Outcomes.COUNT, replies.chances(), to * Outcomes.COUNT, Outcomes.COUNT);
            reached[to] = lookahead;
        }
    }

    private void value(Batch batch, int size, int lookahead) {
        if (lookahead == 1) {
            crew.run(
                    size,
                    (search, k) ->
                            search.evaluate(batch.planes, k * Planes.STRIDE, 1, batch.chances, k * Outcomes.COUNT));
            return;
        }
        Lookahead first = crew.workers().get(0);
        for (int k = 0; k < size; k++) {
            if (!first.known(batch.planes, k * Planes.STRIDE, lookahead, batch.chances, k * Outcomes.COUNT)) {
                batch.pending[batch.pendingCount++] = k;
            }
        }
        valueRollByRoll(batch, lookahead);
    }

    /** One task a roll: 21 times as many as positions, so that no thread is left waiting for long. */
    private void valueRollByRoll(Batch batch, int lookahead) {
        float[] replied = new float[batch.pendingCount * Roll.COUNT * Outcomes.COUNT];
        crew.run(batch.pendingCount * Roll.COUNT, (search, task) -> {
            int at = batch.pending[task / Roll.COUNT] * Planes.STRIDE;
            search.reply(batch.planes, at, task % Roll.COUNT, lookahead - 1, replied, task * Outcomes.COUNT);
        });
        for (int p = 0; p < batch.pendingCount; p++) {
            RollMean mean = new RollMean();
            for (int roll = 0; roll < Roll.COUNT; roll++) {
                mean.add(roll, replied, (p * Roll.COUNT + roll) * Outcomes.COUNT);
            }
            int k = batch.pending[p];
            mean.write(batch.chances, k * Outcomes.COUNT);
            cache.store(batch.planes, k * Planes.STRIDE, lookahead, batch.chances, k * Outcomes.COUNT);
        }
    }

    private List<Searched> found(int[] reached) {
        List<Searched> found = new ArrayList<>(reached.length);
        for (int i = 0; i < reached.length; i++) {
            found.add(new Searched(i, Outcomes.of(replies.chances(), i * Outcomes.COUNT), reached[i]));
        }
        return found;
    }

    /**
     * Number of positions valued by the evaluators so far.
     *
     * @return at least 0
     */
    public long evaluations() {
        return crew.workers().stream().mapToLong(Lookahead::evaluations).sum();
    }

    /**
     * Share of look-ups in the cache that found their position.
     *
     * @return 0 to 1
     */
    public double hitRate() {
        return cache.hitRate();
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        crew.close();
    }
}
