package org.pipwright.cli.train;

import java.util.concurrent.atomic.AtomicBoolean;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.training.reference.Deeplearning4j;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.run.InvalidRunException;
import org.pipwright.training.run.RunFolder;
import org.pipwright.training.run.TrainingRun;
import org.pipwright.training.settings.InvalidSettingsException;
import org.pipwright.training.settings.Preset;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** Does what the command {@code train} asks for; apart from it, because it needs the training module. */
public final class TrainJob {
    private final Console console;
    private final TrainRequest request;

    /**
     * A job.
     *
     * @param console where to write
     * @param request what to do
     */
    public TrainJob(Console console, TrainRequest request) {
        this.console = console;
        this.request = request;
    }

    /** Prints the settings that a run would have. */
    public void printSettings() {
        try {
            String settings = limited(fresh()).toText();
            console.out()
                    .print(request.preset() == null ? settings : "# Preset " + request.preset() + ".\n\n" + settings);
        } catch (InvalidSettingsException e) {
            throw new UserError(e.getMessage());
        }
    }

    /** Trains to the end, or until interrupted. */
    public void train() {
        try {
            RunFolder run = (request.resume() ? reopened() : started()).withTables(request.tables());
            AtomicBoolean stop = new AtomicBoolean();
            Interruption.during(() -> train(run, stop), () -> stop.set(true));
        } catch (InvalidSettingsException | InvalidRunException e) {
            throw new UserError(e.getMessage());
        } catch (LinkageError e) {
            // Only the reference learner needs more than Pipwright's own classes.
            throw new UserError(
                    Deeplearning4j.isHere()
                            ? "Deeplearning4j has no native library for this machine: train with learner = sparse"
                            : "learner = reference needs Deeplearning4j, which is an archive of its own: unpack"
                                    + " pipwright-reference of the same release over this folder, or train with"
                                    + " learner = sparse");
        }
    }

    private void train(RunFolder run, AtomicBoolean stop) {
        Integer asked = request.threads();
        int threads = asked == null ? Runtime.getRuntime().availableProcessors() : asked;
        Metrics last;
        try (TrainProgress progress = TrainProgress.of(console.err())) {
            last = TrainingRun.run(run, threads, progress, new RunPage(), stop::get);
        }
        console.err().println((stop.get() ? "stopped" : "done") + " after " + TrainProgress.words(last));
        console.out().println(run.modelFile());
        console.out().flush();
    }

    private RunFolder started() {
        TrainingSettings settings = limited(fresh());
        if (!settings.limits().any()) {
            throw new UserError("say how long to train: --games N, --minutes M, --hours H or --preset NAME");
        }
        RunFolder run = RunFolder.create(request.folder(), settings);
        return request.preset() == null ? run : run.withPreset(Preset.named(request.preset()));
    }

    private RunFolder reopened() {
        if (request.preset() != null || request.settings() != null || request.seed() != null) {
            throw new UserError("--resume goes on with the settings and the seed of the run: leave those options out");
        }
        RunFolder run = RunFolder.open(request.folder());
        TrainingSettings settings = run.settings();
        TrainingSettings longer = limited(settings);
        if (!longer.equals(settings)) {
            run.writeSettings(longer);
        }
        return run;
    }

    private TrainingSettings fresh() {
        TrainingSettings begin = request.preset() == null
                ? TrainingSettings.defaults()
                : Preset.named(request.preset()).settings();
        TrainingSettings settings = request.settings() == null
                ? begin
                : TrainingSettings.read(request.settings(), begin, console.err()::println);
        return request.seed() == null
                ? settings
                : settings.with(Setting.SEED, request.seed().toString());
    }

    /** The limits on the command line replace those of the settings. */
    private TrainingSettings limited(TrainingSettings settings) {
        if (request.games() == null && request.minutes() == null) {
            return settings;
        }
        return settings.with(Setting.GAMES, request.games() == null ? "0" : Long.toString(request.games()))
                .with(Setting.MINUTES, request.minutes() == null ? "0" : Double.toString(request.minutes()));
    }
}
