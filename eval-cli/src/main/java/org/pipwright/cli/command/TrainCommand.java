package org.pipwright.cli.command;

import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.train.DeviceTrainJob;
import org.pipwright.cli.train.TrainJob;
import org.pipwright.cli.train.TrainRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Self-play to a net. */
@Command(
        name = "train",
        customSynopsis = {
            "pipwright train --preset evening|overnight --out FOLDER [options]",
            "       pipwright train --games N | --minutes M | --hours H --out FOLDER [options]",
            "       pipwright train --resume --out FOLDER [options]",
            "       pipwright train --cluster MASTER --games N --out FOLDER [options]",
            "       pipwright train --device threads --preset evening|overnight --out FOLDER [options]",
            "       pipwright train --device cuda --preset deep|slim --out FOLDER [options]",
            "       pipwright train --print-settings [--preset NAME]"
        },
        header = "Train a net by self-play, from nothing but the rules.",
        description = {
            "The net plays itself and learns from every position by TD(lambda). The folder holds the net as of the last"
                    + " checkpoint (net.safetensors), learning curves (report.html, metrics.csv), the settings and the"
                    + " checkpoints. An interrupt (Ctrl-C) stops the run and loses only the round at hand;"
                    + " --resume goes on from there. With --games, the same settings and seed give the same net bit for bit"
                    + " on the same kind of machine, with any number of threads, and with --cluster, whose machines play the"
                    + " games and make the targets while this one learns.",
            "",
            "With --device cuda a far stronger net is trained on an NVIDIA card (compute capability 8.0 or newer, Linux on"
                    + " x86-64, the libraries of CUDA 13): residual networks, whose targets come from lookahead instead of"
                    + " the dice. Such a run ends by time, has settings of its own, and is not the same bit for bit when it"
                    + " is repeated; --resume goes on with the same --device. With --device threads the processor does the"
                    + " same with a small residual network."
        },
        footer = {
            "Examples:",
            "  pipwright train --preset evening --out evening",
            "  pipwright train --preset overnight --seed 7 --out overnight",
            "  pipwright train --print-settings --preset evening > my.settings",
            "  pipwright train --settings my.settings --games 1000000 --out mine",
            "  pipwright train --device threads --preset overnight --out night",
            "  pipwright train --device cuda --preset deep --out strong",
            "  pipwright duel mine/net.safetensors fifth"
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

    @Option(
            names = "--seed",
            paramLabel = "S",
            description = "Seed of everything random. Default: that of the settings, 1 if they name none.")
    private Long seed;

    @Option(
            names = "--preset",
            paramLabel = "NAME",
            completionCandidates = PresetNames.class,
            description = "Begin with settings made for a purpose: evening takes about 20 minutes on two cores,"
                    + " overnight 8 hours, also with --device threads; with --device cuda deep takes 19 minutes, slim 10. A file and other options"
                    + " change them.")
    private String preset;

    @Option(names = "--settings", paramLabel = "FILE", description = "Take all other settings from a file.")
    private Path settingsFile;

    @Option(names = "--print-settings", description = "Print the settings a run would have, with comments, and stop.")
    private boolean printSettings;

    @Option(
            names = "--resume",
            description = "Go on with the run in the folder, with its settings; a new limit may be given.")
    private boolean resume;

    @Option(
            names = "--device",
            paramLabel = "NAME",
            completionCandidates = Devices.Training.class,
            description =
                    "What trains: cpu, the processor (default); threads, the processor too, but with the recipe for a card;"
                            + " or cuda, an NVIDIA card.")
    private String device = Devices.CPU;

    @Option(names = "--threads", paramLabel = "T", description = "Threads to use. Default: one for each core.")
    private Integer threads;

    @Mixin
    private TablesOption tables;

    @Mixin
    private ClusterOption cluster;

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
        requireDevice();
        Threads.checked(threads);
        TrainRequest request = new TrainRequest(
                games, allMinutes(), folder, seed, preset, settingsFile, resume, threads, tables.folder());
        if (!device.equals(Devices.CPU)) {
            DeviceTrainJob job = new DeviceTrainJob(console(), request, device);
            run(job::printSettings, job::train);
        } else {
            TrainJob job = new TrainJob(console(), request, () -> cluster.openIfGiven(console()));
            run(job::printSettings, job::train);
        }
        return 0;
    }

    private void requireDevice() {
        Devices.require(device, Devices.TRAINING);
        if (!device.equals(Devices.CPU) && games != null) {
            throw new UserError(
                    "a run with --device " + device + " ends by time: give --minutes or --hours, not --games");
        }
        if (cluster.given() && !device.equals(Devices.CPU)) {
            throw new UserError("--cluster is for rounds of self-play, which a run with --device " + device
                    + " does not have: leave one of them out");
        }
    }

    private void run(Runnable printing, Runnable training) {
        if (printSettings) {
            printing.run();
            return;
        }
        if (folder == null) {
            throw new UserError("say where the run goes: --out FOLDER");
        }
        training.run();
    }

    /** What a shell offers; the presets themselves belong to training, which help and completion do without. */
    static final class PresetNames implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return List.of("evening", "overnight", "deep", "slim").iterator();
        }
    }

    private Double allMinutes() {
        if (minutes != null && hours != null) {
            throw new UserError("give --minutes or --hours, not both");
        }
        return hours == null ? minutes : Double.valueOf(MINUTES_AN_HOUR * hours);
    }
}
