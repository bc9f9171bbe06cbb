package org.pipwright.training.run;

import org.pipwright.training.report.Metrics;

/** Told how a run goes, on the thread that runs it. */
public interface TrainingListener {
    /**
     * A round is done.
     *
     * @param progress share of the run that is done, 0 to 1
     * @param games games played in all
     * @param gamesPerSecond over the last rounds
     * @param secondsLeft estimate of the time still needed
     * @param latest figures of the last evaluation, or null before the first
     */
    void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest);

    /**
     * Strength has been evaluated.
     *
     * @param metrics the figures
     * @param progress share of the run that is done, 0 to 1
     * @param secondsLeft estimate of the time still needed
     */
    void evaluated(Metrics metrics, double progress, double secondsLeft);

    /**
     * Something went wrong that the run could deal with.
     *
     * @param message one line
     */
    void warning(String message);
}
