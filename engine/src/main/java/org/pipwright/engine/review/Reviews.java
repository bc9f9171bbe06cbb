package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.record.GameRecord;

/** Reviews records by several threads, a turn at a time. What comes out does not depend on their number. */
public final class Reviews {
    /** Files in which findings are kept, so that a review can be stopped and resumed. */
    public static final WorkFile.Kind FILES = FindingLines.KIND;

    private final Knowledge knowledge;
    private final ReviewSettings settings;
    private final int threads;

    /**
     * Reviews with given settings.
     *
     * @param knowledge what is judged with
     * @param settings how deeply to look
     * @param threads number of threads, at least 1
     */
    public Reviews(Knowledge knowledge, ReviewSettings settings, int threads) {
        this.knowledge = knowledge;
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
    public Review review(GameRecord record, WorkFile file, Progress listener) {
        List<Moment> moments = Moments.of(record);
        file.require(FILES);
        List<String> asked = FindingLines.task(record, settings);
        Finding[] found = FindingLines.read(file, asked, moments, knowledge.terms());
        // At once, so that a file that cannot be written is told before the work and not after it.
        file.begin(asked, () -> FindingLines.lines(found));
        List<Integer> pending = new ArrayList<>();
        // From the last to the first: what a play leads to has then been looked at already, as the turn that follows
        // it.
        for (int i = found.length - 1; i >= 0; i--) {
            if (found[i] == null) {
                pending.add(i);
            }
        }
        try (Crew<Reviewer> crew = new Crew<>(threads, () -> new Reviewer(knowledge, settings, listener::stopped))) {
            int[] done = {found.length - pending.size()};
            crew.run(pending.size(), (reviewer, task) -> {
                if (listener.stopped()) {
                    throw new CancellationException("the review was stopped");
                }
                Finding finding = reviewer.find(moments.get(pending.get(task)));
                synchronized (found) {
                    found[pending.get(task)] = finding;
                    file.keep(asked, () -> FindingLines.lines(found));
                    listener.reached(++done[0], found.length);
                }
            });
            crew.workers().forEach(Reviewer::close);
            return new Review(
                    record, settings, judged(moments, found, crew.workers().get(0)));
        } finally {
            file.end(asked, () -> FindingLines.lines(found));
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
