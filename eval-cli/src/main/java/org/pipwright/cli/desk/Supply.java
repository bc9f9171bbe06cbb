package org.pipwright.cli.desk;

import java.util.ArrayDeque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.cli.report.Sentences;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.Clarity;
import org.pipwright.engine.drill.Drill;
import org.pipwright.engine.drill.DrillListener;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Mistakes;
import org.pipwright.engine.drill.Selection;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.drill.Theme;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.ranking.Grade;

/** Where exercises come from, one after the other. Serves one thread at a time. */
interface Supply {
    /** Lookahead of right answers, as {@code drill} has it. */
    int LOOKAHEAD = 2;

    /**
     * The next exercise.
     *
     * @param knowledge what right answers are found with
     * @param threads number of threads, at least 1
     * @param unwanted asked again and again whether to give up
     * @return the exercise; empty if there are no more
     * @throws CancellationException if it was given up
     */
    Optional<Exercise> next(Knowledge knowledge, int threads, BooleanSupplier unwanted);

    /** From games of the drill's own, of which each seed has others. */
    static Supply ofTheme(Theme theme, long seed, Contestant weaker) {
        long[] next = {seed};
        return (knowledge, threads, unwanted) -> {
            Clarity clarity = new Clarity(0.08, 0.04, LOOKAHEAD, true);
            DrillSettings settings = new DrillSettings(theme, 1, next[0]++, clarity, 4, 20_000, Sentences.ALL);
            Drill drill = new Drill(settings, knowledge, weaker.entrant(), listener(unwanted));
            return first(drill.run(threads), unwanted);
        };
    }

    /** All of some decisions. */
    static Supply ofAll(List<Candidate> candidates) {
        SelectionSettings settings = SelectionSettings.all(Math.max(1, candidates.size()), LOOKAHEAD, true);
        return of(candidates.iterator(), settings);
    }

    /** The costly mistakes of a player in a record, once it has been reviewed; the costliest first. */
    static Supply ofMistakes(Records.Opened opened, int side) {
        double least = Grade.COSTLY.from();
        String player = opened.review().record().heading().name(side);
        Clarity clarity = new Clarity(least, least / 2, LOOKAHEAD, true);
        ArrayDeque<Supply> ready = new ArrayDeque<>();
        return (knowledge, threads, unwanted) -> {
            if (ready.isEmpty()) {
                opened.review().watch(unwanted, () -> {});
                RecordReview.Standing standing = opened.review().standing();
                if (!standing.complete()) {
                    throw new CancellationException("the review was not waited for");
                }
                Mistakes mistakes = new Mistakes(least, player::equals);
                mistakes.add(opened.name().isEmpty() ? opened.id() : opened.name(), standing.review());
                List<Candidate> candidates = mistakes.costliestFirst();
                ready.add(of(
                        candidates.iterator(),
                        new SelectionSettings(Optional.empty(), Math.max(1, candidates.size()), clarity, true, 4)));
            }
            return ready.peek().next(knowledge, threads, unwanted);
        };
    }

    private static Supply of(Iterator<Candidate> candidates, SelectionSettings settings) {
        ArrayDeque<Candidate> given = new ArrayDeque<>();
        return (knowledge, threads, unwanted) -> {
            while (!given.isEmpty() || candidates.hasNext()) {
                if (given.isEmpty()) {
                    given.add(candidates.next());
                }
                List<Exercise> found =
                        new Selection(settings, knowledge, listener(unwanted)).run(List.of(given.peek()), threads);
                Optional<Exercise> exercise = first(found, unwanted);
                given.remove();
                if (exercise.isPresent()) {
                    return exercise;
                }
            }
            return Optional.empty();
        };
    }

    private static Optional<Exercise> first(List<Exercise> found, BooleanSupplier unwanted) {
        if (found.isEmpty() && unwanted.getAsBoolean()) {
            throw new CancellationException("nobody waits for an exercise");
        }
        return found.stream().findFirst();
    }

    private static DrillListener listener(BooleanSupplier unwanted) {
        return new DrillListener() {
            @Override
            public void reached(int found, long looked) {
                // One exercise at a time: there is nothing to count.
            }

            @Override
            public boolean stopped() {
                return unwanted.getAsBoolean();
            }
        };
    }
}
