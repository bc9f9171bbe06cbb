package org.pipwright.cli.command;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.cli.train.TrainProgress;
import org.pipwright.training.run.InvalidRunException;
import org.pipwright.training.run.Metrics;
import org.pipwright.training.run.RunFolder;
import org.pipwright.training.run.TrainingRun;
import org.pipwright.training.settings.InvalidSettingsException;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Self-play to a net. */
@Command(
        name = "train",
        customSynopsis = {
            "pipwright train --games N | --minutes M | --hours H  --out FOLDER [options]",
            "pipwright train --resume --out FOLDER [options]",
            "pipwright train --print-settings"
        },
        header = "Train a net by self-play, from nothing but the rules.",
        description = {
            "The net plays itself and learns from every position by TD(lambda). The folder holds the net as of the last"
                    + " checkpoint (net.safetensors), learning curves (report.html, metrics.csv), the settings and the"
                    + " checkpoints. An interrupt (Ctrl-C) stops after the round at hand with everything written; --resume"
                    + " goes on from there. With --games, the same settings and seed give the same net bit for bit, with any"
                    + " number of threads."
        },
        footer = {
            "Examples:",
            "  pipwright train --minutes 20 --out evening",
            "  pipwright train --hours 8 --seed 7 --out overnight",
            "  pipwright train --print-settings > my.settings",
            "  pipwright train --settings my.settings --games 1000000 --out mine",
            "  pipwright duel mine/net.safetensors first"
        })
public final class TrainCommand extends CliCommand {
    private static final double MINUTES_AN_HOUR = 60;

    @Option(names = "--games", paramLabel = "N", description = "Train for N games in all.")
    private Long games;

    @Option(names = "--minutes", paramLabel = "M", description = "Train for M minutes in all.")
    private Double minutes;

    @Option(names = "--hours", paramLabel = "H", description = "Train for H hours in all.")
    private Double hours;

    @Option(names = "--out", paramLabel = "FOLDER", description = "Folder of the run.")
    private Path folder;

    @Option(names = "--seed", paramLabel = "S", description = "Seed of everything random; 1 if not given.")
    private Long seed;

    @Option(names = "--settings", paramLabel = "FILE", description = "Take all other settings from a file.")
    private Path settingsFile;

    @Option(names = "--print-settings", description = "Print the settings a run would have, with comments, and stop.")
    private boolean printSettings;

    @Option(
            names = "--resume",
            description = "Go on with the run in the folder, with its settings; a new limit may be given.")
    private boolean resume;

    @Option(names = "--threads", paramLabel = "T", description = "Threads to use; all cores if not given.")
    private Integer threads;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public TrainCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        try {
            if (printSettings) {
                out().print(limited(fresh()).toText());
                return 0;
            }
            train();
            return 0;
        } catch (InvalidSettingsException | InvalidRunException e) {
            throw new UserError(e.getMessage());
        } catch (LinkageError e) {
            // Only the reference learner needs one.
            throw new UserError("Deeplearning4j has no native library for this machine: train with learner = sparse");
        }
    }

    private void train() {
        if (folder == null) {
            throw new UserError("say where the run goes: --out FOLDER");
        }
        if (threads != null && threads < 1) {
            throw new UserError("--threads is " + threads + ": give at least 1");
        }
        RunFolder run = resume ? reopened() : started();
        int workers = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        AtomicBoolean stop = new AtomicBoolean();
        Interruption.during(() -> run(run, workers, stop), () -> stop.set(true));
    }

    private void run(RunFolder run, int workers, AtomicBoolean stop) {
        Metrics last;
        try (TrainProgress progress = TrainProgress.of(console().err())) {
            last = TrainingRun.run(run, workers, progress, stop::get);
        }
        console().err().println((stop.get() ? "stopped" : "done") + " after " + TrainProgress.words(last));
        out().println(run.modelFile());
        out().flush();
    }

    private RunFolder started() {
        TrainingSettings settings = limited(fresh());
        if (settings.whole(Setting.GAMES) == 0 && settings.number(Setting.MINUTES) == 0) {
            throw new UserError("say how long to train: --games N, --minutes M or --hours H");
        }
        return RunFolder.create(folder, settings);
    }

    private RunFolder reopened() {
        if (settingsFile != null || seed != null) {
            throw new UserError("--resume goes on with the settings and the seed of the run: leave the others out");
        }
        RunFolder run = RunFolder.open(folder);
        TrainingSettings settings = run.settings();
        TrainingSettings longer = limited(settings);
        if (!longer.equals(settings)) {
            run.writeSettings(longer);
        }
        return run;
    }

    private TrainingSettings fresh() {
        TrainingSettings settings =
                settingsFile == null ? TrainingSettings.defaults() : TrainingSettings.read(settingsFile);
        return seed == null ? settings : settings.with(Setting.SEED, seed.toString());
    }

    /** The limits on the command line replace those of the settings. */
    private TrainingSettings limited(TrainingSettings settings) {
        if (minutes != null && hours != null) {
            throw new UserError("give --minutes or --hours, not both");
        }
        if (games == null && minutes == null && hours == null) {
            return settings;
        }
        double wanted = minutes != null ? minutes : hours != null ? MINUTES_AN_HOUR * hours : 0;
        return settings.with(Setting.GAMES, games == null ? "0" : games.toString())
                .with(Setting.MINUTES, wanted == 0 ? "0" : Double.toString(wanted));
    }
}
