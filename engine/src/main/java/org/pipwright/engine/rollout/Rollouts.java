package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.pipwright.engine.files.InvalidWorkFileException;
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
     * @throws CancellationException if the listener stops it during the first round
     */
    public RolloutReport compare(
            Position position, Roll roll, List<Play> candidates, RolloutListener<? super RolloutReport> listener) {
        return compare(position, roll, candidates, RolloutFile.NONE, listener);
    }

    /**
     * Compares plays of a roll, from where a file has left off, and keeps the file up to date.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param candidates at least one play of that position and roll
     * @param file where the numbers are kept
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end
     * @throws IllegalArgumentException if there are no candidates, or one is not a play of this position and roll
     * @throws CancellationException if the listener stops it during the first round
     * @throws InvalidWorkFileException if the file belongs to another rollout or is damaged
     */
    public RolloutReport compare(
            Position position,
            Roll roll,
            List<Play> candidates,
            RolloutFile file,
            RolloutListener<? super RolloutReport> listener) {
        if (candidates.isEmpty()) {
            throw new IllegalArgumentException("no plays to roll out: give at least one");
        }
        candidates.forEach(play -> Plays.to(position, roll, play.result()));
        return run(candidates.stream().map(Start::after).collect(Collectors.toList()), file, listener);
    }

    /**
     * The chances of a position before the roll.
     *
     * @param position an unfinished position
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end: one line, for the side on roll
     * @throws IllegalArgumentException if the game is over
     * @throws CancellationException if the listener stops it during the first round
     */
    public RolloutReport odds(Position position, RolloutListener<? super RolloutReport> listener) {
        return odds(position, RolloutFile.NONE, listener);
    }

    /**
     * The chances of a position before the roll, from where a file has left off; keeps the file up to date.
     *
     * @param position an unfinished position
     * @param file where the numbers are kept
     * @param listener told of the standings every {@value RolloutSettings#ROUND} trials
     * @return the standings at the end: one line, for the side on roll
     * @throws IllegalArgumentException if the game is over
     * @throws CancellationException if the listener stops it during the first round
     * @throws InvalidWorkFileException if the file belongs to another rollout or is damaged
     */
    public RolloutReport odds(Position position, RolloutFile file, RolloutListener<? super RolloutReport> listener) {
        if (position.finished()) {
            throw new IllegalArgumentException("the game is over: no roll follows");
        }
        return run(List.of(Start.beforeRoll(position)), file, listener);
    }

    private RolloutReport run(List<Start> starts, RolloutFile file, RolloutListener<? super RolloutReport> listener) {
        Rounds.Playing<Trial> playing = (trial, candidate, number, results, at) ->
                trial.play(starts.get(candidate), number, listener::stopped, results, at);
        return new Rounds<>(crew, settings, playing)
                .run(
                        identity(starts),
                        starts.size(),
                        Trial.NUMBERS,
                        file,
                        moments -> RolloutReport.of(moments, settings.sure()),
                        RolloutReport::clear,
                        listener);
    }

    /** All that decides the numbers but the net, one thing a line. */
    private List<String> identity(List<Start> starts) {
        List<String> lines = new ArrayList<>(settings.identity());
        starts.forEach(start -> lines.add((start.counted() ? "before " : "after ") + start.position()));
        return lines;
    }

    /** Lets the threads go. */
    @Override
    public void close() {
        crew.close();
    }
}
