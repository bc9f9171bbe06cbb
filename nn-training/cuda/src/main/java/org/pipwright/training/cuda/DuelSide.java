package org.pipwright.training.cuda;

import java.util.function.Supplier;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.network.Net;
import org.pipwright.training.device.DevicePlayer;

/** Who answers for one side of a duel in lockstep. */
sealed interface DuelSide {
    /** A network of the accelerator, which makes the play after which its equity is best. */
    record OnAccelerator(int net) implements DuelSide {}

    /** Players of this machine, one a thread. */
    record OnThreads(Supplier<Player> players) implements DuelSide {}

    /** Whether the card can answer for a player. */
    static boolean fits(DevicePlayer player) {
        return player.net().filter(GameNets::fits).isPresent();
    }

    /** The net of a player for whom the card answers. */
    static Net net(DevicePlayer player) {
        return player.net().orElseThrow();
    }
}
