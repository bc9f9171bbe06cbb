package org.pipwright.training.device;

import java.util.ServiceLoader;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;

/** Plays games on a device, many at once. Found by {@link ServiceLoader}, as {@link DeviceTrainer} is. */
public interface DeviceGames {
    /**
     * Which device it is for.
     *
     * @return the word that asks for it, such as {@code cuda}
     */
    String device();

    /**
     * Plays a cubeless duel without lookahead. The dice are those of the same duel on the processor, so the two differ only
     * where decisions do.
     *
     * @param a one side
     * @param b the other
     * @param settings what decides the duel, without luck
     * @param threads threads of this machine to use, at least 1
     * @param progress told of the tally so far now and then, from one thread
     * @param stop asked again and again whether to stop early
     * @return all pairs, or those up to the verdict or the stop
     * @throws MissingDeviceException if there is no such device, or what it needs is not installed
     */
    DeviceDuel duel(
            DevicePlayer a,
            DevicePlayer b,
            DuelSettings settings,
            int threads,
            Consumer<Tally> progress,
            BooleanSupplier stop);

    /**
     * Gets ready to roll games out.
     *
     * @param rules how
     * @param threads threads of this machine to use, at least 1
     * @return what rolls them out
     * @throws IllegalArgumentException if the device cannot answer for one of the nets
     * @throws MissingDeviceException if there is no such device, or what it needs is not installed
     */
    DeviceRollouts rollouts(RolloutRules rules, int threads);

    /**
     * Lets a net play against itself.
     *
     * @param rules the net, the dice and the positions to take
     * @param threads threads of this machine to use, at least 1
     * @param games told of each game in the order of their numbers, from one thread; gives whether it wants more
     * @return the device, and how well it agrees with the processor
     * @throws IllegalArgumentException if the device cannot answer for the net
     * @throws MissingDeviceException if there is no such device, or what it needs is not installed
     */
    DeviceSelfPlay selfPlay(SelfPlayRules rules, int threads, Predicate<SelfPlayedGame> games);

    /**
     * What plays games on a device.
     *
     * @param device the word that asks for it
     * @return what plays on it
     * @throws MissingDeviceException if nothing on the class path does
     */
    static DeviceGames of(String device) {
        return ServiceLoader.load(DeviceGames.class).stream()
                .map(ServiceLoader.Provider::get)
                .filter(games -> games.device().equals(device))
                .findFirst()
                .orElseThrow(() -> new MissingDeviceException("what plays with --device " + device
                        + " is not on the class path: the script pipwright brings it"));
    }
}
