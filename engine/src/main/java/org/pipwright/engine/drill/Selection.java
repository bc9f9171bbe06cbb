package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.parallel.Crew;

/**
 * Makes exercises of decisions that are given, in their order. What comes out does not depend on the number of threads.
 */
public final class Selection {
    private final SelectionSettings settings;
    private final Knowledge knowledge;
    private final DrillListener listener;

    private final Progress progress;

    /**
     * A selection about to begin.
     *
     * @param settings what decides which decisions become exercises
     * @param knowledge what right answers are found with
     * @param listener told how many exercises there are, and how many decisions were looked at; asked
     *     whether to stop
     */
    public Selection(SelectionSettings settings, Knowledge knowledge, DrillListener listener) {
        this.settings = settings;
        this.knowledge = knowledge;
        this.listener = listener;
        progress = Progress.until(listener::stopped);
    }

    /**
     * Looks at decisions until there are enough exercises.
     *
     * @param candidates the decisions
     * @param threads number of threads, at least 1
     * @return the exercises, in the order of the decisions; those found so far after a stop
     */
    public List<Exercise> run(List<Candidate> candidates, int threads) {
        List<Exercise> taken = new ArrayList<>();
        try (Crew<SelectionWorker> crew =
                new Crew<>(threads, () -> new SelectionWorker(settings, knowledge, progress))) {
            try {
                take(candidates, crew, taken);
            } finally {
                crew.workers().forEach(SelectionWorker::close);
            }
        } catch (CancellationException e) {
            // What was taken before stands.
        }
        return taken;
    }

    private void take(List<Candidate> candidates, Crew<SelectionWorker> crew, List<Exercise> taken) {
        int from = 0;
        while (from < candidates.size() && taken.size() < settings.count()) {
            int to = Math.min(candidates.size(), from + 2 * crew.size());
            for (Optional<Exercise> each : block(crew, candidates.subList(from, to))) {
                each.filter(exercise -> taken.size() < settings.count() && settings.isNew(exercise, taken))
                        .ifPresent(taken::add);
            }
            from = to;
            listener.reached(taken.size(), from);
        }
    }

    private static List<Optional<Exercise>> block(Crew<SelectionWorker> crew, List<Candidate> candidates) {
        List<Optional<Exercise>> found = new ArrayList<>(Collections.nCopies(candidates.size(), Optional.empty()));
        crew.run(candidates.size(), (worker, i) -> found.set(i, worker.exercise(candidates.get(i))));
        return found;
    }
}
