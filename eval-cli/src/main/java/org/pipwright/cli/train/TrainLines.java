package org.pipwright.cli.train;

import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.training.report.Metrics;

/** Progress as plain lines. */
final class TrainLines implements TrainProgress {
    private final PrintWriter err;

    TrainLines(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest) {
        // Too often for a log.
    }

    @Override
    public void evaluated(Metrics metrics, double progress, double secondsLeft) {
        err.println(String.format(
                Locale.ROOT,
                "%5.1f %%, %s left: %s",
                100 * progress,
                TrainProgress.time(secondsLeft),
                TrainProgress.words(metrics)));
    }

    @Override
    public void warning(String message) {
        err.println("warning: " + message);
    }

    @Override
    public void close() {
        // Lines stay where they are.
    }
}
