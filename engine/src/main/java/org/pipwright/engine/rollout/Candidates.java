package org.pipwright.engine.rollout;

import java.io.Serializable;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleUnaryOperator;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * What is played out.
 *
 * @param starts where the games of each candidate begin
 * @param stakes what is played for, seen from the side that counts
 * @param per what values are divided by
 */
record Candidates(List<Start> starts, Stakes stakes, int per) implements Serializable {
    Candidates {
        starts = List.copyOf(starts);
    }

    int count() {
        return starts.size();
    }

    /** By candidate, what a lost game is worth if a won one is worth so much, and the reverse; null where the next roll wins. */
    DoubleUnaryOperator[] others() {
        boolean match = stakes instanceof MatchStakes;
        return starts.stream()
                .map(start -> over(start.position()) ? null : (DoubleUnaryOperator) value -> match ? 1 - value : -value)
                .toArray(DoubleUnaryOperator[]::new);
    }

    /** Whether a game is over, or ends with the next roll whatever that is. */
    private static boolean over(Position position) {
        return position.finished()
                || Roll.all().stream().allMatch(roll -> Plays.legal(position, roll).stream()
                        .anyMatch(play -> play.next().finished()));
    }

    /** Numbers of a trial. */
    int series() {
        return Trial.numbers(stakes);
    }

    /** Numbers of a round of all candidates: those of a candidate's trials together, one trial after another. */
    int numbers() {
        return count() * stride();
    }

    /** Numbers of a round of one candidate. */
    int stride() {
        return RolloutSettings.ROUND * series();
    }

    /**
     * Plays one trial of one candidate.
     *
     * @param trial who plays it
     * @param candidate index of the candidate
     * @param number of the trial, from 0
     * @param stopped asked before each roll whether to give up
     * @param results where to write its numbers
     * @param at index of the first
     * @throws CancellationException if it was told to stop
     */
    void play(Trial trial, int candidate, int number, BooleanSupplier stopped, double[] results, int at) {
        Start start = starts.get(candidate);
        trial.play(start, start.counted() ? stakes : stakes.swapped(), number, stopped, results, at);
        results[at + Moments.VALUE] /= per;
        results[at + Moments.PLAIN] /= per;
    }
}
