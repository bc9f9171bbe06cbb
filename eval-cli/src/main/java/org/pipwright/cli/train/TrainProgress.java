package org.pipwright.cli.train;

import java.io.PrintWriter;
import java.util.Locale;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.run.TrainingListener;

/** Shows how training goes. */
public interface TrainProgress extends TrainingListener, AutoCloseable {
    /** Takes a bar away; may be called twice. */
    @Override
    void close();

    /**
     * A bar if standard error is a terminal, else a line each time strength is evaluated.
     *
     * @param err where lines go
     * @return the display
     */
    static TrainProgress of(PrintWriter err) {
        // The launcher knows: Java itself cannot tell whether standard error is a terminal.
        return Boolean.getBoolean("pipwright.terminal") ? new TrainBar(err) : new TrainLines(err);
    }

    /**
     * Figures in a line.
     *
     * @param metrics the figures
     * @return for instance {@code 120,000 games, 1,040 games/s, loss 1.012 contact 0.231 race, +2.85 ± 0.01 points a game v its rival}
     */
    static String words(Metrics metrics) {
        return String.format(
                Locale.ROOT,
                "%,d games, %,.0f games/s, loss %.4f contact %.4f race, %+.3f ± %.3f points a game v its rival",
                metrics.games(),
                metrics.gamesPerSecond(),
                metrics.contactLoss(),
                metrics.raceLoss(),
                metrics.evaluation().points(),
                metrics.evaluation().error());
    }

    /**
     * A length of time in a few letters.
     *
     * @param seconds the time; not a number if unknown
     * @return for instance {@code 3h05m}, {@code 12m30s} or {@code ?}
     */
    static String time(double seconds) {
        if (Double.isNaN(seconds)) {
            return "?";
        }
        long s = Math.round(seconds);
        return s >= 3600
                ? String.format(Locale.ROOT, "%dh%02dm", s / 3600, s % 3600 / 60)
                : String.format(Locale.ROOT, "%dm%02ds", s / 60, s % 60);
    }
}
