package org.pipwright.cli.desk;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.Moments;
import org.pipwright.engine.review.Review;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.Reviews;

/**
 * A record and its review in the making: the net's own opinion of every turn first, then the deeper one of {@code review}.
 * It is worked on while some page watches; what was found stays.
 */
final class RecordReview {
    /** Lookahead in the end, as {@code review} has it. */
    static final int LOOKAHEAD = 1;

    private static final long PAUSE_MILLIS = 200;

    /** A page that goes from turn to turn is away for a moment. */
    private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(2);

    private final GameRecord record;
    private final List<Moment> moments;
    private final Supplier<Knowledge> knowledge;
    private final Executor executor;
    private final int threads;
    private final BooleanSupplier closed;

    // Guarded by this.
    private final ReviewedTurn[] turns;
    private final int[] depths;
    private int version;
    private int watchers;
    private long left;
    private boolean working;
    private String problem = "";

    /**
     * What is known of a record by now.
     *
     * @param review the turns that were judged
     * @param done turns that were judged as deeply as they will be
     * @param all all turns
     * @param problem why there will be no more; empty if all is well
     */
    record Standing(Review review, int done, int all, String problem) {
        boolean complete() {
            return done == all;
        }

        Optional<ReviewedTurn> turn(Moment moment) {
            return review.turns().stream()
                    .filter(turn -> turn.moment().game() == moment.game()
                            && turn.moment().turn() == moment.turn())
                    .findFirst();
        }
    }

    /**
     * Nothing is known yet.
     *
     * @param record the record
     * @param knowledge what it is judged with; asked when work begins
     * @param executor who works
     * @param threads threads of the work, at least 1
     * @param closed whether the desk has been closed
     */
    RecordReview(
            GameRecord record, Supplier<Knowledge> knowledge, Executor executor, int threads, BooleanSupplier closed) {
        this.record = record;
        this.moments = Moments.of(record);
        this.knowledge = knowledge;
        this.executor = executor;
        this.threads = threads;
        this.closed = closed;
        turns = new ReviewedTurn[moments.size()];
        depths = new int[moments.size()];
        Arrays.fill(depths, -1);
    }

    GameRecord record() {
        return record;
    }

    /** All turns, judged or not. */
    List<Moment> moments() {
        return moments;
    }

    synchronized Standing standing() {
        List<ReviewedTurn> known = Arrays.stream(turns).filter(Objects::nonNull).toList();
        return new Standing(new Review(record, settings(LOOKAHEAD), known), done(LOOKAHEAD), turns.length, problem);
    }

    /** How deeply a turn was looked at; -1 for not at all. */
    synchronized int depth(Moment moment) {
        return depths[moments.indexOf(moment)];
    }

    private static ReviewSettings settings(int lookahead) {
        return new ReviewSettings(lookahead, 0, 1, true);
    }

    private int done(int lookahead) {
        return (int) Arrays.stream(depths).filter(depth -> depth >= lookahead).count();
    }

    /**
     * Has the record worked on as long as somebody watches, and returns when it is done or nobody does.
     *
     * @param gone asked again and again whether the watcher has gone
     * @param changed told of what is known by now, at once and when it has changed
     */
    void watch(BooleanSupplier gone, Runnable changed) {
        synchronized (this) {
            watchers++;
        }
        try {
            int seen = -1;
            while (!gone.getAsBoolean()) {
                int now = begin();
                boolean over = over();
                if (now != seen) {
                    changed.run();
                    seen = now;
                }
                if (over) {
                    return;
                }
                TimeUnit.MILLISECONDS.sleep(PAUSE_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            synchronized (this) {
                watchers--;
                left = System.nanoTime();
            }
        }
    }

    /** Sees to it that somebody works; tells what is new by the number of changes so far. */
    private synchronized int begin() {
        if (!working && !over()) {
            working = true;
            executor.execute(this::work);
        }
        return version;
    }

    private synchronized boolean over() {
        return done(LOOKAHEAD) == turns.length || !problem.isEmpty();
    }

    private synchronized boolean unwanted() {
        return closed.getAsBoolean() || watchers == 0 && System.nanoTime() - left > PATIENCE_NANOS;
    }

    private void work() {
        try {
            for (int lookahead = 0; lookahead <= LOOKAHEAD; lookahead++) {
                int depth = lookahead;
                new Reviews(knowledge.get(), settings(lookahead), threads)
                        .review(record, known(depth), turn -> keep(turn, depth), Progress.until(this::unwanted));
            }
        } catch (CancellationException e) {
            // Whoever comes back begins again from what was found.
        } catch (RuntimeException e) {
            stop("The review cannot go on: " + e.getMessage());
            throw e;
        } finally {
            synchronized (this) {
                working = false;
            }
        }
    }

    private synchronized void stop(String why) {
        problem = why;
        version++;
    }

    private synchronized List<ReviewedTurn> known(int lookahead) {
        return IntStream.range(0, turns.length)
                .filter(turn -> depths[turn] >= lookahead)
                .mapToObj(turn -> turns[turn])
                .toList();
    }

    private synchronized void keep(ReviewedTurn turn, int lookahead) {
        for (int i = 0; i < turns.length; i++) {
            Moment moment = moments.get(i);
            if (moment.game() == turn.moment().game()
                    && moment.turn() == turn.moment().turn()) {
                turns[i] = turn;
                depths[i] = lookahead;
                version++;
            }
        }
    }
}
