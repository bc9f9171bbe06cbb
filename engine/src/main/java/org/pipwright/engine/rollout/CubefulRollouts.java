package org.pipwright.engine.rollout;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubefulSearch;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.parallel.Crew;

/**
 * Plays positions out many times with the cube: both sides double, take, pass and move for points or for the match, as
 * their terms judge. Every candidate gets the same dice. Games end early where the terms know the exact value. The numbers
 * depend on settings, evaluator and terms alone, not on the number of threads. To be asked from one thread at a time.
 */
public final class CubefulRollouts implements AutoCloseable {
    private static final int NUMBERS = CubefulTrial.NUMBERS;

    /** All numbers are kept, forty bytes a trial and candidate. */
    private static final int MOST_TRIALS = 1_000_000;

    private final RolloutSettings settings;
    private final Crew<CubefulTrial> crew;
    private volatile boolean stopped;

    /**
     * Rollouts with given settings.
     *
     * @param evaluators makes an evaluator for one thread; all equal
     * @param terms makes the terms of one thread: how to judge under given stakes, seen from the side on roll
     * @param settings what decides a rollout; its lookahead is that of checkers and cube
     * @param threads number of threads, at least 1
     * @throws IllegalArgumentException if there are more than a million trials, or the lookahead is beyond
     *     {@value CubefulSearch#MOST}
     */
    public CubefulRollouts(
            Supplier<PositionEvaluator> evaluators,
            Supplier<? extends Function<Stakes, CubeTerms>> terms,
            RolloutSettings settings,
            int threads) {
        if (settings.trials() > MOST_TRIALS) {
            throw new IllegalArgumentException(settings.trials() + " trials: with the cube use up to " + MOST_TRIALS);
        }
        if (settings.lookahead() > CubefulSearch.MOST) {
            throw new IllegalArgumentException(
                    "lookahead " + settings.lookahead() + ": with the cube use 0 to " + CubefulSearch.MOST);
        }
        this.settings = settings;
        crew = new Crew<>(threads, () -> new CubefulTrial(evaluators.get(), terms.get(), settings, () -> stopped));
    }

    /**
     * Plays candidates out.
     *
     * @param starts at least one; all count results for the same side
     * @param stakes what is played for, seen from the side that counts
     * @param unit cube that values are given per unit of: as a rule the one asked about
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials; says whether to go on
     * @return the standings at the end, for the side that counts; candidates by their index in the list
     * @throws CancellationException if it is stopped during the first round
     */
    public CubefulRolloutReport compare(
            List<CubefulStart> starts, Stakes stakes, int unit, Predicate<CubefulRolloutReport> listener) {
        CubefulSums sums = new CubefulSums(starts.size(), stakes instanceof MatchStakes ? 1 : unit, settings.sure());
        CubefulRolloutReport report = null;
        while (report == null || !report.clear() && report.trials() < settings.trials()) {
            if (!playRound(starts, stakes, sums)) {
                break;
            }
            report = sums.report();
            if (!listener.test(report)) {
                break;
            }
        }
        if (report == null) {
            throw new CancellationException("stopped before the first " + RolloutSettings.ROUND + " games were over");
        }
        return report;
    }

    /** Ends the rollout soon, from any thread; rounds under way are left out. */
    public void stop() {
        stopped = true;
    }

    /** Trials in any order by any thread, but added in their own; false if it was stopped, and nothing added. */
    private boolean playRound(List<CubefulStart> starts, Stakes stakes, CubefulSums sums) {
        int first = sums.trials();
        int stride = RolloutSettings.ROUND * NUMBERS;
        double[] results = new double[starts.size() * stride];
        try {
            crew.run(starts.size() * RolloutSettings.ROUND, (trial, task) -> {
                int candidate = task % starts.size();
                int inRound = task / starts.size();
                CubefulStart start = starts.get(candidate);
                trial.play(
                        start,
                        start.counted() ? stakes : stakes.swapped(),
                        first + inRound,
                        results,
                        candidate * stride + inRound * NUMBERS);
            });
        } catch (CancellationException e) {
            return false;
        }
        for (int i = 0; i < RolloutSettings.ROUND; i++) {
            sums.add(results, i * NUMBERS, stride);
        }
        return true;
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        crew.close();
    }
}
