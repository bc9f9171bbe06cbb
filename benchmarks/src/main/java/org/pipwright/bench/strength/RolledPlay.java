package org.pipwright.bench.strength;

import java.util.Arrays;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.statistics.RunningMean;

/** A candidate that is being rolled out on a device. The games of a trial have the same dice for all candidates. */
final class RolledPlay {
    final Play play;

    /** After the play, the other side on roll. */
    final Position after;

    private double[] values = new double[0];

    /** Trials so far, and how far the next games go. */
    private int trials;

    private int target;

    RolledPlay(Play play, Position after) {
        this.play = play;
        this.after = after;
    }

    int trials() {
        return trials;
    }

    /** Trials to play from {@link #trials()} on, up to this one. */
    int target() {
        return target;
    }

    void extend(int to) {
        target = Math.max(target, to);
        values = Arrays.copyOf(values, target);
    }

    /** What a trial came to for the side that played. */
    void put(int trial, double equity) {
        values[trial] = equity;
    }

    /** All trials up to the target were played. */
    void complete() {
        trials = target;
    }

    RunningMean equity() {
        RunningMean mean = RunningMean.NONE;
        for (int t = 0; t < trials; t++) {
            mean = mean.plus(values[t]);
        }
        return mean;
    }

    /** Equity less that of another, over the trials of both. */
    RunningMean less(RolledPlay other) {
        RunningMean mean = RunningMean.NONE;
        for (int t = 0; t < Math.min(trials, other.trials); t++) {
            mean = mean.plus(values[t] - other.values[t]);
        }
        return mean;
    }
}
