package org.pipwright.cli.duel;

import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BiConsumer;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.training.device.DeviceDuel;
import org.pipwright.training.device.DeviceGames;
import org.pipwright.training.device.DevicePlayer;
import org.pipwright.training.device.MissingDeviceException;

/** A duel on another device than the processor. */
public final class DeviceDuelJob {
    private final Console console;
    private final String device;

    /**
     * A job.
     *
     * @param console where progress goes
     * @param device the device, as {@code --device} names it
     */
    public DeviceDuelJob(Console console, String device) {
        this.console = console;
        this.device = device;
    }

    /**
     * Plays the duel and reports, early if interrupted.
     *
     * @param a one side
     * @param b the other
     * @param settings what decides it
     * @param threads threads of this machine to use
     * @param report prints what came of it, all the way to flushed output
     * @throws UserError if a side looks rolls ahead, or there is no such device here
     */
    public void run(
            Contestant a,
            Contestant b,
            DuelSettings settings,
            int threads,
            BiConsumer<Tally, Optional<DeviceDuel>> report) {
        DevicePlayer one = player(a);
        DevicePlayer other = player(b);
        AtomicBoolean stop = new AtomicBoolean();
        Progress progress = Progress.of(2 * settings.pairs(), console.err());
        try {
            DeviceGames games = DeviceGames.of(device);
            Interruption.during(
                    () -> {
                        DeviceDuel done = progress.during(() -> games.duel(
                                one,
                                other,
                                settings,
                                threads,
                                soFar -> progress.reached(soFar.games(), note(soFar)),
                                stop::get));
                        report.accept(done.tally(), Optional.of(done));
                    },
                    () -> stop.set(true));
        } catch (MissingDeviceException e) {
            throw new UserError(e.getMessage());
        }
    }

    private DevicePlayer player(Contestant contestant) {
        if (contestant.net().filter(net -> net.lookahead() > 0).isPresent()) {
            throw new UserError("--device " + device + " plays without lookahead: leave it out of '" + contestant.name()
                    + "', or leave out --device");
        }
        return new DevicePlayer(contestant.entrant().players(), contestant.net().map(net -> net.model()
                .net()));
    }

    private String note(Tally soFar) {
        return String.format(
                Locale.ROOT,
                "%+.3f %s %.3f",
                soFar.values().mean(),
                console.unicode() ? "\u00b1" : "+/-",
                soFar.values().standardError());
    }
}
