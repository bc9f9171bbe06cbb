package org.pipwright.engine.rollout;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;

/**
 * Plays positions out many times to learn their chances. Every candidate gets the same dice. The numbers depend on the
 * settings and the judgement alone, not on the number of threads. To be asked from one thread at a time.
 */
public final class Rollouts implements AutoCloseable {
    /** Numbers a trial writes: six chances, and six with the luck taken off. */
    private static final int NUMBERS = 2 * Outcomes.COUNT;

    private final RolloutSettings settings;
    private final Crew<Trial> crew;

    /**
     * Rollouts with given settings.
     *
     * @param judgements makes what one thread judges with; all equal
     * @param settings what decides a rollout
     * @param threads number of threads, at least 1
     */
    public Rollouts(Supplier<Judgement> judgements, RolloutSettings settings, int threads) {
        this.settings = settings;
        crew = new Crew<>(threads, () -> new Trial(judgements.get(), settings));
    }

    /**
     * Compares plays of a roll.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param candidates at least one play of that position and roll
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end, for the side that plays; candidates by their index in the list
     * @throws IllegalArgumentException if there are no candidates, or one is not a play of this position and roll
     */
    public RolloutReport compare(Position position, Roll roll, List<Play> candidates, RolloutListener listener) {
        if (candidates.isEmpty()) {
            throw new IllegalArgumentException("no plays to roll out: give at least one");
        }
        candidates.forEach(play -> Plays.to(position, roll, play.result()));
        return run(candidates.stream().map(Start::after).collect(Collectors.toList()), listener);
    }

    /**
     * The chances of a position before the roll.
     *
     * @param position an unfinished position
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end: one line, for the side on roll
     * @throws IllegalArgumentException if the game is over
     */
    public RolloutReport odds(Position position, RolloutListener listener) {
        if (position.finished()) {
            throw new IllegalArgumentException("the game is over: no roll follows");
        }
        return run(List.of(Start.beforeRoll(position)), listener);
    }

    private RolloutReport run(List<Start> starts, RolloutListener listener) {
        Moments moments = new Moments(starts.size());
        RolloutReport report;
        do {
            playRound(starts, moments);
            report = RolloutReport.of(moments, starts.size(), settings.sure());
        } while (listener.round(report) && !report.clear() && report.trials() < settings.trials());
        return report;
    }

    /** Trials in any order by any thread, but added up in their own order: sums of doubles depend on it. */
    private void playRound(List<Start> starts, Moments moments) {
        int first = moments.trials();
        int stride = RolloutSettings.ROUND * NUMBERS;
        double[] results = new double[starts.size() * stride];
        crew.run(starts.size() * RolloutSettings.ROUND, (trial, task) -> {
            int candidate = task % starts.size();
            int inRound = task / starts.size();
            trial.play(starts.get(candidate), first + inRound, results, candidate * stride + inRound * NUMBERS);
        });
        for (int i = 0; i < RolloutSettings.ROUND; i++) {
            moments.add(results, i * NUMBERS, stride);
        }
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        crew.close();
    }
}
