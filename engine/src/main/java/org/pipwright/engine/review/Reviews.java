package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.record.GameRecord;

/** Reviews records by several threads, a turn at a time. What comes out does not depend on their number. */
public final class Reviews {
    /** Files in which findings are kept, so that a review can be stopped and resumed. */
    public static final WorkFile.Kind FILES = FindingLines.KIND;

    private final Knowledge knowledge;
    private final ReviewSettings settings;
    private final Reviewers reviewers;

    /**
     * Reviews with given settings.
     *
     * @param knowledge what is judged with
     * @param settings how deeply to look
     * @param threads number of threads, at least 1
     */
    public Reviews(Knowledge knowledge, ReviewSettings settings, int threads) {
        this(knowledge, settings, new CrewOfReviewers(knowledge, settings, threads));
    }

    /**
     * Reviews by other machines.
     *
     * @param knowledge what is judged with
     * @param settings how deeply to look
     * @param workforce the machines, closed by who opened them
     * @throws IllegalStateException if what values positions is no net
     */
    public Reviews(Knowledge knowledge, ReviewSettings settings, Workforce workforce) {
        this(knowledge, settings, new ReviewersElsewhere(knowledge, settings, workforce));
    }

    private Reviews(Knowledge knowledge, ReviewSettings settings, Reviewers reviewers) {
        this.knowledge = knowledge;
        this.settings = settings;
        this.reviewers = reviewers;
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
        try {
            return review(record, moments, found, listener, turn -> file.keep(asked, () -> FindingLines.lines(found)));
        } finally {
            file.end(asked, () -> FindingLines.lines(found));
        }
    }

    /**
     * Goes on with a review of which some turns are known.
     *
     * @param record the record
     * @param known turns of it that were judged with the same knowledge and settings
     * @param judged given each turn that is judged now, by one thread at a time
     * @param listener told after each turn
     * @return the review
     * @throws CancellationException if the listener stops it
     */
    public Review review(
            GameRecord record, List<ReviewedTurn> known, Consumer<ReviewedTurn> judged, Progress listener) {
        List<Moment> moments = Moments.of(record);
        Map<List<Integer>, Finding> byPlace = new HashMap<>();
        known.forEach(turn -> byPlace.put(place(turn.moment()), turn.finding()));
        Finding[] found =
                moments.stream().map(moment -> byPlace.get(place(moment))).toArray(Finding[]::new);
        return review(record, moments, found, listener, judged);
    }

    private static List<Integer> place(Moment moment) {
        return List.of(moment.game(), moment.turn());
    }

    private Review review(
            GameRecord record,
            List<Moment> moments,
            Finding[] found,
            Progress listener,
            Consumer<ReviewedTurn> judged) {
        List<Integer> pending = new ArrayList<>();
        // From the last to the first: what a play leads to has then been looked at already, as the turn that follows
        // it.
        for (int i = found.length - 1; i >= 0; i--) {
            if (found[i] == null) {
                pending.add(i);
            }
        }
        int[] done = {found.length - pending.size()};
        reviewers.find(
                record,
                pending,
                (turn, finding) -> {
                    found[turn] = finding;
                    judged.accept(judged(moments.get(turn), finding));
                    listener.reached(++done[0], found.length);
                },
                listener::stopped);
        if (done[0] < found.length) {
            throw new CancellationException("the review was stopped");
        }
        List<ReviewedTurn> turns = new ArrayList<>();
        for (int i = 0; i < found.length; i++) {
            turns.add(judged(moments.get(i), found[i]));
        }
        return new Review(record, settings, turns);
    }

    private ReviewedTurn judged(Moment moment, Finding finding) {
        CubeTerms mine = knowledge.terms().apply(moment.stakes());
        Worth worth = new Worth(mine, moment.rolling());
        double luck = finding.luck().orElse(0);
        return new ReviewedTurn(
                moment, finding, Decisions.of(moment, finding, mine), worth.total(luck), luck / worth.point());
    }
}
