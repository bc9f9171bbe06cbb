package org.pipwright.cli.train;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.training.device.DeviceRequest;
import org.pipwright.training.device.DeviceTrainer;
import org.pipwright.training.device.MissingDeviceException;
import org.pipwright.training.run.InvalidRunException;
import org.pipwright.training.settings.InvalidSettingsException;

/** Does what the command {@code train} asks for on another device than the processor. */
public final class DeviceTrainJob {
    private final Console console;
    private final TrainRequest request;
    private final String device;

    /**
     * A job.
     *
     * @param console where to write
     * @param request what to do
     * @param device the device, as {@code --device} names it
     */
    public DeviceTrainJob(Console console, TrainRequest request, String device) {
        this.console = console;
        this.request = request;
        this.device = device;
    }

    /** Prints the settings that a run would have. */
    public void printSettings() {
        userErrors(() -> {
            String settings = DeviceTrainer.of(device).settings(forDevice());
            console.out()
                    .print(request.preset() == null ? settings : "# Preset " + request.preset() + ".\n\n" + settings);
        });
    }

    /** Trains to the end, or until interrupted. */
    public void train() {
        AtomicBoolean stop = new AtomicBoolean();
        userErrors(() -> Interruption.during(() -> train(stop), () -> stop.set(true)));
    }

    private void train(AtomicBoolean stop) {
        List<Path> files = DeviceTrainer.of(device)
                .train(
                        forDevice(),
                        line -> {
                            console.err().println(line);
                            console.err().flush();
                        },
                        stop::get);
        console.err().println(stop.get() ? "stopped: --resume goes on" : "done");
        files.forEach(console.out()::println);
        console.out().flush();
    }

    private static void userErrors(Runnable work) {
        try {
            work.run();
        } catch (InvalidSettingsException | InvalidRunException | MissingDeviceException e) {
            throw new UserError(e.getMessage());
        }
    }

    private DeviceRequest forDevice() {
        Integer asked = request.threads();
        return new DeviceRequest(
                Optional.ofNullable(request.folder()),
                Optional.ofNullable(request.preset()),
                Optional.ofNullable(request.settings()),
                Optional.ofNullable(request.seed()),
                Optional.ofNullable(request.minutes()),
                request.resume(),
                asked == null ? Runtime.getRuntime().availableProcessors() : asked,
                new RunPage());
    }
}
