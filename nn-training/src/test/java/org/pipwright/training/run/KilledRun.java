package org.pipwright.training.run;

import java.nio.file.Files;
import java.nio.file.Path;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** A training process to be killed: begins or goes on with the run of a folder, and prints where it stands. */
final class KilledRun {
    static final double CHECKPOINT_SECONDS = 0.1;
    private static final double MINUTES = 1e4;

    private KilledRun() {}

    static TrainingSettings settings() {
        return SmallRun.SETTINGS
                .with(Setting.GAMES, "0")
                .with(Setting.MINUTES, Double.toString(MINUTES))
                .with(Setting.CONTACT_HIDDEN, "128,16")
                .with(Setting.ROUND, "8")
                .with(Setting.CHECKPOINT_SECONDS, Double.toString(CHECKPOINT_SECONDS))
                .with(Setting.EVALUATION_SECONDS, "1")
                .with(Setting.EVALUATION_GAMES, "2");
    }

    /** A run that ends after some games, and so has the same bits however often it was stopped. */
    static TrainingSettings settings(long games) {
        return settings().with(Setting.GAMES, Long.toString(games)).with(Setting.MINUTES, "0");
    }

    /** Arguments: the folder, and after how many games to end, 0 for never. */
    public static void main(String[] arguments) {
        Path path = Path.of(arguments[0]);
        long games = Long.parseLong(arguments[1]);
        System.out.println("ready");
        RunFolder folder = Files.exists(path.resolve("settings.txt"))
                ? RunFolder.open(path)
                : RunFolder.create(path, games == 0 ? settings() : settings(games));
        TrainingRun.run(folder, 2, new Printer(), ReportPage.NONE, () -> false);
    }

    /** A line a round: games, and seconds of training. */
    private static final class Printer implements TrainingListener {
        @Override
        public void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest) {
            System.out.println("round " + games + " " + progress * MINUTES * 60);
        }

        @Override
        public void evaluated(Metrics metrics, double progress, double secondsLeft) {}

        @Override
        public void warning(String message) {
            System.out.println("warning " + message);
        }
    }
}
