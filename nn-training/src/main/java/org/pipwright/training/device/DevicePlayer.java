package org.pipwright.training.device;

import java.util.Optional;
import java.util.function.Supplier;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Net;

/**
 * Who plays on a device: a net that it may be able to answer for itself, or anything else, which this machine's threads
 * answer for.
 *
 * @param players makes a player for a thread of this machine; plays what the net likes best if there is one
 * @param net the net, or empty for a player without one
 */
public record DevicePlayer(Supplier<Player> players, Optional<Net> net) {}
