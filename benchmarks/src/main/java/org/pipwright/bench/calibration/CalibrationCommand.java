package org.pipwright.bench.calibration;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.ClusterOption;
import org.pipwright.bench.LookaheadOption;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.TablesOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.training.device.DeviceGames;
import org.pipwright.training.device.MissingDeviceException;
import org.pipwright.training.device.SelfPlayRules;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes how a net's predictions compare with what happens in its games: tables, JSON and a picture, into a folder. */
@Command(name = "calibration", description = "How a net's predictions compare with what happens in its games.")
public final class CalibrationCommand extends BenchCommand {
    /** A game has some 55 rolls, so this takes five or six positions of each. */
    private static final int EVERY = 10;

    @Mixin
    private NetOption net;

    @Option(names = "--positions", paramLabel = "N", description = "Positions to compare (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 10_000_000)
    private int positions = 200_000;

    @Option(
            names = "--every",
            paramLabel = "N",
            description = "Take one position every so many rolls (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 1000)
    private int every = EVERY;

    @Mixin
    private LookaheadOption lookahead;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threadsOption;

    @Mixin
    private TablesOption tables;

    @Option(
            names = "--device",
            paramLabel = "NAME",
            description = "Play the games on this device, many at once: cuda, an NVIDIA card. The net plays alone,"
                    + " without lookahead and tables.")
    private String device;

    @Mixin
    private ClusterOption cluster;

    @Option(names = "--out", paramLabel = "FOLDER", required = true, description = "The folder to write to.")
    private Path folder;

    @Override
    protected void run() throws IOException {
        Calibration calibration = device == null ? onProcessor() : onDevice();
        Files.createDirectories(folder);
        String text = CalibrationText.of(calibration);
        write(folder.resolve("calibration.md"), text);
        write(folder.resolve("calibration.json"), CalibrationJson.of(calibration));
        CalibrationPicture.of(calibration).write(folder, "calibration");
        out().print(text);
    }

    private Calibration onProcessor() throws IOException {
        int threads = threadsOption.count();
        Knowledge knowledge = Nets.knowledge(net.load(), tables.given(), threads);
        String who = "net " + net.name() + (tables.given() ? " with bear-off tables" : "") + ", lookahead "
                + lookahead.rolls();
        try (Workforce workforce = cluster.openIfGiven()) {
            return workforce == null
                    ? Calibration.of(
                            who, knowledge::judgement, lookahead.rolls(), positions, every, seed.value(), threads)
                    : Calibration.elsewhere(
                            who, knowledge, lookahead.rolls(), positions, every, seed.value(), workforce);
        } catch (WorkforceException e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    private Calibration onDevice() throws IOException {
        if (given("--cluster")) {
            throw new IllegalArgumentException("--device is this machine's card: leave it out, or --cluster");
        }
        if (tables.given() || lookahead.rolls() > 0) {
            throw new IllegalArgumentException(
                    "on a device the net plays alone: leave out " + (tables.given() ? "--tables" : "--lookahead"));
        }
        try {
            return Calibration.onDevice(
                    "net " + net.name() + " alone, lookahead 0",
                    DeviceGames.of(device),
                    new SelfPlayRules(net.load().net(), seed.value(), every),
                    positions,
                    threadsOption.count());
        } catch (MissingDeviceException e) {
            throw new IllegalArgumentException(e.getMessage());
        }
    }

    private static void write(Path file, String text) throws IOException {
        AtomicFile.write(file, to -> to.write(text.getBytes(StandardCharsets.UTF_8)));
    }
}
