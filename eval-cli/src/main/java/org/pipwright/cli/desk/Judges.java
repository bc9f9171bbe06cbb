package org.pipwright.cli.desk;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.record.GameRecord;

/**
 * The judges of a desk: one for each net and lookahead, made when it is first asked for. Loading a net keeps nobody waiting
 * but those who want that net.
 */
final class Judges implements AutoCloseable {
    private static final int PATIENCE_SECONDS = 5;

    private final Function<String, Knowledge> load;
    private final int threads;
    private final Map<String, Known> known = new ConcurrentHashMap<>();
    private final Map<Chair, SharedJudge> judges = new ConcurrentHashMap<>();
    private final AtomicBoolean closed = new AtomicBoolean();
    private final ExecutorService workers = Executors.newCachedThreadPool(task -> {
        Thread thread = new Thread(task, "pipwright-desk");
        thread.setDaemon(true);
        return thread;
    });

    private record Chair(String net, int lookahead) {}

    /** What a net knows, once it has been loaded. */
    private final class Known {
        private volatile Knowledge knowledge;

        synchronized Knowledge get(String net) {
            knowledge = knowledge == null ? load.apply(net) : knowledge;
            return knowledge;
        }

        boolean loaded() {
            return knowledge != null;
        }
    }

    /**
     * No judges yet.
     *
     * @param load what a net of a name knows
     * @param threads threads of each judge, at least 1
     */
    Judges(Function<String, Knowledge> load, int threads) {
        this.load = load;
        this.threads = threads;
    }

    /** What a net knows; each is loaded once. */
    Knowledge knowledge(String net) {
        return known.computeIfAbsent(net, name -> new Known()).get(net);
    }

    /** Whether a net has been loaded, so that it answers at once. */
    boolean ready(String net) {
        Known there = known.get(net);
        return there != null && there.loaded();
    }

    /** Does something beside everything else, while the desk is open. */
    void beside(Consumer<BooleanSupplier> work) {
        workers.execute(() -> work.accept(closed::get));
    }

    /** Begins to review a record; it is worked on while somebody watches. */
    RecordReview review(GameRecord record, String net) {
        return new RecordReview(record, () -> knowledge(net), workers, threads, closed::get);
    }

    /** Begins to practise; the next exercise is looked for while somebody asks. */
    Practice practice(PracticeSources.Chosen chosen, String net, PracticeLog log) {
        return new Practice(chosen, () -> knowledge(net), workers, threads, log);
    }

    /** The judge that looks so far ahead by a net. */
    SharedJudge of(String net, int lookahead) {
        Knowledge knowledge = knowledge(net);
        return judges.computeIfAbsent(
                new Chair(net, lookahead),
                chair -> new SharedJudge(
                        new Judge(knowledge, threads), Effort.lookahead(lookahead), workers, closed::get));
    }

    /** Ends what is being thought about, and lets all threads go. */
    @Override
    public void close() {
        closed.set(true);
        workers.shutdown();
        try {
            if (!workers.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return;
        }
        judges.values().forEach(SharedJudge::close);
    }
}
