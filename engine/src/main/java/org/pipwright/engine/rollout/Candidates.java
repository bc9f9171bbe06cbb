package org.pipwright.engine.rollout;

import java.io.Serializable;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.cube.Stakes;

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
