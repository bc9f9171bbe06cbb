package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.search.ChanceCache;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.ParallelLookahead;

/** Reviews records by several threads, a turn at a time. What comes out does not depend on their number. */
public final class Reviews {
    private final Supplier<Judgement> judgements;
    private final Function<Stakes, CubeTerms> terms;
    private final ReviewSettings settings;
    private final int threads;

    /**
     * Reviews with given settings.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param terms makes terms for given stakes, seen from the side on roll; asked by each thread for its own
     * @param settings how deeply to look
     * @param threads number of threads, at least 1
     */
    public Reviews(
            Supplier<Judgement> judgements, Function<Stakes, CubeTerms> terms, ReviewSettings settings, int threads) {
        this.judgements = judgements;
        this.terms = terms;
        this.settings = settings;
        this.threads = threads;
    }

    /**
     * Reviews a record, from where a file has left off, and keeps the file up to date.
     *
     * @param record the record
     * @param file where findings are kept
     * @param listener told after each turn
     * @return the review
     * @throws CancellationException if the listener stops it; the file then has what was found so far
     * @throws InvalidWorkFileException if the file belongs to another review or is damaged
     */
    public Review review(GameRecord record, ReviewFile file, ReviewListener listener) {
        List<Moment> moments = Moments.of(record);
        List<String> asked = ReviewFile.task(record, settings);
        Finding[] found = file.read(asked, moments);
        // At once, so that a file that cannot be written is told before the work and not after it.
        file.begin(asked, found);
        List<Integer> pending = new ArrayList<>();
        for (int i = 0; i < found.length; i++) {
            if (found[i] == null) {
                pending.add(i);
            }
        }
        ChanceCache memory = ParallelLookahead.memory();
        try (Crew<Reviewer> crew =
                new Crew<>(threads, () -> new Reviewer(judgements, terms, settings, memory, listener::stopped))) {
            int[] done = {found.length - pending.size()};
            crew.run(pending.size(), (reviewer, task) -> {
                if (listener.stopped()) {
                    throw new CancellationException("the review was stopped");
                }
                Finding finding = reviewer.find(moments.get(pending.get(task)));
                synchronized (found) {
                    found[pending.get(task)] = finding;
                    file.keep(asked, found);
                    listener.reached(++done[0], found.length);
                }
            });
            crew.workers().forEach(Reviewer::close);
            return new Review(
                    record, settings, judged(moments, found, crew.workers().get(0)));
        } finally {
            file.end(asked, found);
        }
    }

    private static List<ReviewedTurn> judged(List<Moment> moments, Finding[] found, Reviewer reviewer) {
        List<ReviewedTurn> turns = new ArrayList<>();
        for (int i = 0; i < found.length; i++) {
            Moment moment = moments.get(i);
            CubeTerms mine = reviewer.terms(moment.stakes());
            Worth worth = new Worth(mine, moment.rolling());
            double luck = found[i].luck().orElse(0);
            turns.add(new ReviewedTurn(
                    moment, found[i], Decisions.of(moment, found[i], mine), worth.total(luck), luck / worth.point()));
        }
        return turns;
    }
}
