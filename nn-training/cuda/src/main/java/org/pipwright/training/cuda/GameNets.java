package org.pipwright.training.cuda;

import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Net;

/** Nets that an accelerator can answer for in games: residual networks, and layered ones with their pairs. */
final class GameNets {
    /** Stands for the shape of a net that is no residual network. */
    private static final ResidualShape NONE = ResidualShape.parse("128x1");

    private GameNets() {}

    /** Whether an accelerator can answer for a net. */
    static boolean fits(Net net) {
        return net instanceof Lanes lanes ? LayeredNets.fits(lanes) : ResidualNets.fits(net);
    }

    /**
     * Makes sure that it can.
     *
     * @throws IllegalArgumentException if it cannot
     */
    static void requireFits(Net net) {
        if (!fits(net)) {
            throw new IllegalArgumentException(
                    "a card answers for residual networks on places-1 whose width is 128, 256"
                            + " and so on to 1024, and for layered ones of at most four layers and "
                            + LayeredNets.MAX_WIDTH
                            + " outputs each, not for " + net.shape());
        }
    }

    /** The shape by which room is made for a net. */
    static ResidualShape shape(Net net) {
        return net instanceof Lanes ? NONE : ResidualNets.shape(net);
    }

    /** Adds a net that fits to an accelerator. */
    static void add(Net net, Accelerator accelerator) {
        if (net instanceof Lanes lanes) {
            accelerator.add(lanes);
        } else {
            accelerator.add(ResidualNets.shape(net), ResidualNets.weights(net));
        }
    }
}
