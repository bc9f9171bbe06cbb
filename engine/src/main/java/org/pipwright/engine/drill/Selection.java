package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.parallel.Workforce;

/**
 * Makes exercises of decisions that are given, in their order. What comes out does not depend on the number of threads.
 */
public final class Selection {
    private final SelectionSettings settings;
    private final Knowledge knowledge;
    private final DrillListener listener;

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
    }

    /**
     * Looks at decisions until there are enough exercises.
     *
     * @param candidates the decisions
     * @param threads number of threads, at least 1
     * @return the exercises, in the order of the decisions; those found so far after a stop
     */
    public List<Exercise> run(List<Candidate> candidates, int threads) {
        try (Crew<SelectionWorker> crew = new Crew<>(
                threads, () -> new SelectionWorker(settings, knowledge, Progress.until(listener::stopped)))) {
            try {
                return run(taken -> ofCrew(candidates, crew, taken));
            } finally {
                crew.workers().forEach(SelectionWorker::close);
            }
        }
    }

    /**
     * Has other machines look at decisions.
     *
     * @param candidates the decisions
     * @param workforce the machines, closed by who opened them
     * @return the exercises that {@link #run(List, int)} makes
     * @throws IllegalStateException if what values positions is no net
     */
    public List<Exercise> run(List<Candidate> candidates, Workforce workforce) {
        SelectionTrade trade = SelectionTrade.of(settings, workforce.share(knowledge.portable()));
        return run(taken -> workforce.inOrder(
                trade, candidates.stream().map(SelectionTrade.Sent::of).iterator(), taken, listener::stopped));
    }

    private List<Exercise> run(Consumer<Predicate<Exercise>> decisions) {
        Taking taking = new Taking();
        try {
            decisions.accept(taking);
        } catch (CancellationException e) {
            // What was taken before stands.
        }
        return taking.taken;
    }

    /** Takes what comes of each decision in order; null if that is nothing. */
    private final class Taking implements Predicate<Exercise> {
        private final List<Exercise> taken = new ArrayList<>();
        private int decisions;

        @Override
        public boolean test(Exercise found) {
            if (found != null && settings.isNew(found, taken)) {
                taken.add(found);
            }
            listener.reached(taken.size(), ++decisions);
            return taken.size() < settings.count();
        }
    }

    private static void ofCrew(List<Candidate> candidates, Crew<SelectionWorker> crew, Predicate<Exercise> taken) {
        for (int from = 0; from < candidates.size(); from += 2 * crew.size()) {
            List<Candidate> some = candidates.subList(from, Math.min(candidates.size(), from + 2 * crew.size()));
            Exercise[] found = new Exercise[some.size()];
            crew.run(
                    found.length,
                    (worker, i) -> found[i] = worker.exercise(some.get(i)).orElse(null));
            if (!Arrays.stream(found).allMatch(taken)) {
                return;
            }
        }
    }
}
