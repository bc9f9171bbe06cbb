package org.pipwright.cli.train;

import java.io.PrintWriter;
import java.util.Locale;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.pipwright.training.report.Metrics;

/** Progress as a bar; what must not be lost goes on a line of its own above it. */
final class TrainBar implements TrainProgress {
    private static final int STEPS = 1000;
    private static final int UPDATE_MILLIS = 500;

    private final PrintWriter err;
    private final ProgressBar bar = new ProgressBarBuilder()
            .setTaskName("train")
            .setInitialMax(STEPS)
            .setStyle(ProgressBarStyle.ASCII)
            .setUpdateIntervalMillis(UPDATE_MILLIS)
            .hideEta()
            .clearDisplayOnFinish()
            .build();

    TrainBar(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest) {
        bar.stepTo(Math.round(progress * STEPS));
        String strength = latest == null
                ? ""
                : String.format(
                        Locale.ROOT,
                        ", loss %.3f, %+.2f v its rival",
                        latest.contactLoss(),
                        latest.evaluation().points());
        bar.setExtraMessage(String.format(
                Locale.ROOT,
                " %,d games, %,.0f/s, %s left%s",
                games,
                gamesPerSecond,
                TrainProgress.time(secondsLeft),
                strength));
    }

    @Override
    public void evaluated(Metrics metrics, double progress, double secondsLeft) {
        // Shown with the next round.
    }

    @Override
    public void warning(String message) {
        err.println("\nwarning: " + message);
    }

    @Override
    public void close() {
        bar.close();
    }
}
