package org.pipwright.cli.train;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.models.ModelCatalog;
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
    /** Whom runs without a preset are evaluated against, and in how many games: a few seconds each time. */
    private static final String RIVAL = "fifth";

    private static final String GAMES = "200";

    private final Console console;
    private final TrainRequest request;
    private final Supplier<Workforce> cluster;

    /**
     * A job.
     *
     * @param console where to write
     * @param request what to do
     * @param cluster finds who plays the games; gives null if this machine's threads do
     */
    public TrainJob(Console console, TrainRequest request, Supplier<Workforce> cluster) {
        this.console = console;
        this.request = request;
        this.cluster = cluster;
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
            Supplier<RunFolder> begin = request.resume() ? reopened() : started();
            // Before anything is written: there may be no such cluster.
            try (Workforce workforce = cluster.get()) {
                RunFolder run = begin.get().withTables(request.tables()).withNets(ModelCatalog.shipped()::load);
                AtomicBoolean stop = new AtomicBoolean();
                Interruption.during(() -> train(run, workforce, stop), () -> stop.set(true));
            }
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

    private void train(RunFolder run, Workforce workforce, AtomicBoolean stop) {
        Integer asked = request.threads();
        int threads = asked == null ? Runtime.getRuntime().availableProcessors() : asked;
        Metrics last;
        try (TrainProgress progress = TrainProgress.of(console.err())) {
            last = TrainingRun.run(run, threads, workforce, progress, new RunPage(), stop::get);
        } catch (WorkforceException e) {
            throw new WorkforceException(e.getMessage() + "; --resume goes on from what was learned until then");
        }
        console.err().println((stop.get() ? "stopped" : "done") + " after " + TrainProgress.words(last));
        console.out().println(run.modelFile());
        console.out().flush();
    }

    /** A new run, whose settings have been read. */
    private Supplier<RunFolder> started() {
        TrainingSettings settings = limited(fresh());
        if (!settings.limits().any()) {
            throw new UserError("say how long to train: --games N, --minutes M, --hours H or --preset NAME");
        }
        return () -> {
            RunFolder run = RunFolder.create(request.folder(), settings);
            return request.preset() == null ? run : run.withPreset(Preset.named(request.preset()));
        };
    }

    /** The run of the folder, which is there. */
    private Supplier<RunFolder> reopened() {
        if (request.preset() != null || request.settings() != null || request.seed() != null) {
            throw new UserError("--resume goes on with the settings and the seed of the run: leave those options out");
        }
        RunFolder run = RunFolder.open(request.folder());
        TrainingSettings settings = run.settings();
        TrainingSettings longer = limited(settings);
        return () -> {
            if (!longer.equals(settings)) {
                run.writeSettings(longer);
            }
            return run;
        };
    }

    private TrainingSettings fresh() {
        TrainingSettings begin = request.preset() == null
                ? TrainingSettings.defaults()
                        .with(Setting.EVALUATION_RIVAL, RIVAL)
                        .with(Setting.EVALUATION_GAMES, GAMES)
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
