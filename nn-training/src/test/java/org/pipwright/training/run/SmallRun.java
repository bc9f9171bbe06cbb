package org.pipwright.training.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Runs of a few rounds with small networks, and a listener that keeps what it was told. */
class SmallRun implements TrainingListener {
    /** The report as plain text. */
    static final ReportPage PAGE = report -> Optional.of(report.toString());

    static final TrainingSettings SETTINGS = TrainingSettings.defaults()
            .with(Setting.GAMES, "150")
            .with(Setting.SEED, "17")
            .with(Setting.CONTACT_HIDDEN, "16,8")
            .with(Setting.RACE_HIDDEN, "8")
            .with(Setting.ROUND, "32")
            .with(Setting.BATCH, "256")
            .with(Setting.EVALUATION_GAMES, "20");

    final List<Long> rounds = new ArrayList<>();
    final List<Metrics> evaluations = new ArrayList<>();
    final List<String> warnings = new ArrayList<>();

    @Override
    public void round(double progress, long games, double gamesPerSecond, double secondsLeft, Metrics latest) {
        rounds.add(games);
    }

    @Override
    public void evaluated(Metrics metrics, double progress, double secondsLeft) {
        evaluations.add(metrics);
    }

    @Override
    public void warning(String message) {
        warnings.add(message);
    }

    /** Stops after so many rounds of this listener. */
    BooleanSupplier after(int count) {
        return () -> rounds.size() >= count;
    }

    static SmallRun finish(RunFolder folder, int threads) {
        SmallRun listener = new SmallRun();
        TrainingRun.run(folder, threads, listener, PAGE, () -> false);
        return listener;
    }

    static SmallRun finish(Path folder, TrainingSettings settings, int threads) {
        return finish(RunFolder.create(folder, settings), threads);
    }
}
